import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';

import { asError } from '../basics/errors.ts';
import { CsvError } from '../log/csvColumns.ts';
import { csvEncoding } from '../log/csvEncoding.ts';
import { type Report, type ReportOptions, reportOf } from './report.ts';

/* `npm run --silent report -- FILE.csv`: the report as JSON on standard output; faults on standard error, exit code 1. */

const HELP = `Usage: npm run --silent report -- FILE.csv [--mix relaxed|free-throws] [--seed N]

Reads a record file (the columns are explained in the app under "Records in and out") and prints as JSON:
  relaxed, pressured   makes, attempts, percentage with its 90 % interval
  drop                 points lost under pressure by the full model: points, low, high (90 %), sd, and the
                       probability that it is above 0; null where it cannot be told, and the notes say why
  verdict              none (too early), likely or clear drop, likely or clear gain, about the same, unclear
  ratio, ratioSpan     pressured over relaxed make rate, and its 90 % interval
  change               of the drop from the first week to the last; negative = it shrank
  pairs                neighbouring rounds with the same shots, one relaxed and one pressured: n, mean in points,
                       se, exact one-sided p; right only if a coin decided which came first; disagrees = true
                       where they and the model are further apart than chance explains
  evidence             e against "pressure does nothing", safe to look at every day; 20 = clear
  matched              points lost, only like compared with like, without a model; 90 % interval
  simple               points lost with all shots thrown together; 95 % interval
  weeks                the drop week by week, with both make percentages; a week without shots is carried over
  places, groups       the drop by spot and kind of shot, as shot (raw) and as the model sees it; and by group
  felt                 pressured rounds by whether nerves rose above the usual
  seen                 share of the mix ever shot under pressure; below 0.5 there is no drop
  hyper, seed          spreads the model has learnt (log-odds), and the seed of its draws
  mix, levels, rounds  what was asked, how sure the intervals are in percent, and rounds in the file
  notes                what to know about these numbers
  shooters             all of this for each shooter; with several the model's figures stand only here
Positive points mean worse under pressure. Single numbers that cannot be told are null, lists are empty.

  --mix relaxed        (default) the drop over the mix of the relaxed shots
  --mix free-throws    all figures of free throws alone
  --seed N             other draws, N from 0 to 4294967295: moves only the last digits. Without it, the file decides.

Rows with the same session and round are one round. Its place in the session is "first"; where that is empty the
round follows the one before: by number where the rounds are numbered (1, 2, 3 or Round 1, Round 2), else as
the rows stand in the file. A file that cannot be read prints nothing here and ends with code 1.`;

/** A fault of the command's user: said in a sentence, without a trace. */
class CommandError extends Error {
  override readonly name = 'CommandError';
}

async function run(args: readonly string[]): Promise<string> {
  const { values, positionals } = readArgs(args);
  if (values.help === true) return HELP;
  const options = { mix: mixOf(values.mix), seed: seedOf(values.seed) };
  const [file, ...more] = positionals;
  if (file === undefined || more.length > 0) {
    throw new CommandError(`Name one record file.\n\n${HELP}`);
  }
  return JSON.stringify(reportOn(file, await bytesOf(file), options), null, 2);
}

function readArgs(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      options: {
        help: { type: 'boolean', short: 'h' },
        mix: { type: 'string' },
        seed: { type: 'string' },
      },
      allowPositionals: true,
    });
  } catch (error) {
    throw new CommandError(`${messageOf(error)}\n\n${HELP}`);
  }
}

function mixOf(word: string | undefined): ReportOptions['mix'] {
  if (word === undefined || word === 'relaxed' || word === 'free-throws') return word;
  throw new CommandError(`--mix is relaxed or free-throws, not "${word}".`);
}

const HIGHEST_SEED = 0xffffffff;

function seedOf(word: string | undefined): number | undefined {
  if (word === undefined) return undefined;
  if (/^\d{1,10}$/.test(word) && Number(word) <= HIGHEST_SEED) return Number(word);
  throw new CommandError(`--seed is a whole number from 0 to ${HIGHEST_SEED}, not "${word}".`);
}

async function bytesOf(file: string): Promise<Uint8Array> {
  // npm runs the command in the project's folder; the name was typed where npm was called.
  const places = [process.cwd(), process.env['INIT_CWD'] ?? process.cwd()];
  const path = places.map((place) => resolve(place, file)).find((place) => existsSync(place));
  if (path === undefined) throw new CommandError(`There is no file ${file}.`);
  try {
    return await readFile(path);
  } catch (error) {
    throw new CommandError(`${file} cannot be read: ${messageOf(error)}`);
  }
}

function reportOn(file: string, bytes: Uint8Array, options: ReportOptions): Report {
  try {
    return reportOf(decoded(file, bytes), options);
  } catch (error) {
    if (error instanceof CsvError) throw new CommandError(`${file} cannot be taken:\n${error.message}`);
    throw error;
  }
}

function decoded(file: string, bytes: Uint8Array): string {
  const decoder = new TextDecoder(csvEncoding(bytes), { fatal: true });
  try {
    return decoder.decode(bytes);
  } catch {
    throw new CommandError(`${file} is not text in UTF-8 or UTF-16. Save it as "CSV UTF-8".`);
  }
}

function messageOf(error: unknown): string {
  return asError(error).message;
}

try {
  console.log(await run(process.argv.slice(2)));
} catch (error) {
  console.error(error instanceof CommandError ? error.message : error);
  process.exitCode = 1;
}
