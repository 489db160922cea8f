import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';

import { asError } from '../basics/errors.ts';
import { CsvError } from '../log/csvColumns.ts';
import { csvEncoding } from '../log/csvEncoding.ts';
import { reportOf } from './report.ts';

/* `npm run --silent report -- FILE.csv`: the report as JSON on standard output; faults on standard error, exit code 1. */

const HELP = `Usage: npm run --silent report -- FILE.csv

Reads a record file (the columns are explained in the app under "Records in and out") and prints as JSON:
  relaxed, pressured   makes, attempts, percentage with its 90 % interval
  drop                 points lost under pressure, like compared with like, with its 90 % interval
  simple               the same from all shots thrown together, with its 95 % interval
  shooters             the same for each shooter
  notes                what to know about these numbers
Positive points mean worse under pressure. A file that cannot be read prints nothing here and ends with code 1.`;

/** A fault of the command's user: said in a sentence, without a trace. */
class CommandError extends Error {
  override readonly name = 'CommandError';
}

async function run(args: readonly string[]): Promise<string> {
  const { help, files } = readArgs(args);
  if (help) return HELP;
  const [file, ...more] = files;
  if (file === undefined || more.length > 0) {
    throw new CommandError(`Name one record file.\n\n${HELP}`);
  }
  return JSON.stringify(reportOn(file, await bytesOf(file)), null, 2);
}

function readArgs(args: readonly string[]): { help: boolean; files: string[] } {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { help: { type: 'boolean', short: 'h', default: false } },
      allowPositionals: true,
    });
    return { help: values.help, files: positionals };
  } catch (error) {
    throw new CommandError(`${messageOf(error)}\n\n${HELP}`);
  }
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

function reportOn(file: string, bytes: Uint8Array): ReturnType<typeof reportOf> {
  try {
    return reportOf(decoded(file, bytes));
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
