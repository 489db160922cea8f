/**
 * `npm run bench [-- name...]`: how fast and how honest the app is, each figure beside a rival from the same run. What takes
 * many minutes is run only by name.
 */
import { availableParallelism, loadavg } from 'node:os';

import { coldLoad } from './coldLoad.ts';
import { coverageOutcomes } from './coverage.ts';
import { cueOnsetOutcomes } from './cueOnsetOutcomes.ts';
import { figures } from './figures.ts';
import { forecastOutcomes } from './forecastOutcomes.ts';
import { gameOutcomes } from './games.ts';
import { longFigures } from './longFigures.ts';
import { modelCoverageOutcomes } from './modelCoverageOutcomes.ts';
import { modelOutcomes } from './modelOutcomes.ts';
import { Once } from './once.ts';
import { passes, sentence, table, type Outcome } from './outcome.ts';
import { openStage } from './stage.ts';
import { tapToAck } from './tapToAck.ts';
import { tapToScreen } from './tapToScreen.ts';
import { playTaps } from './taps.ts';
import { weight } from './weight.ts';

const stage = new Once(openStage);
/** For two benchmarks. */
const relaxedTaps = new Once(async () => playTaps(await stage.get(), 'relaxed', 20));

const names = process.argv.slice(2);

const BENCHMARKS: Readonly<Record<string, () => Outcome[] | Promise<Outcome[]>>> = {
  tapToAck: async () => tapToAck(await stage.get(), await relaxedTaps.get()),
  tapToScreen: async () =>
    tapToScreen(await relaxedTaps.get(), await playTaps(await stage.get(), 'pressured', 5)),
  cueOnsets: cueOnsetOutcomes,
  coldLoad: async () => coldLoad(await stage.get()),
  weight: async () => weight(await stage.get()),
  figures,
  longFigures,
  coverage: () => coverageOutcomes(),
  forecasts: forecastOutcomes,
  games: async () => gameOutcomes(await stage.get()),
  model: () => modelOutcomes(names.includes('model')),
  modelCoverage: modelCoverageOutcomes,
};

/** Not part of a run without names. */
const ONLY_BY_NAME: readonly string[] = ['modelCoverage'];

async function run(): Promise<Outcome[]> {
  const outcomes: Outcome[] = [];
  try {
    for (const [name, benchmark] of Object.entries(BENCHMARKS)) {
      if (!(names.length > 0 ? names.includes(name) : !ONLY_BY_NAME.includes(name))) continue;
      console.log(`\n${name}`);
      for (const outcome of await benchmark()) {
        console.log(`  ${sentence(outcome)}`);
        outcomes.push(outcome);
      }
    }
  } finally {
    await (await stage.done)?.close();
  }
  return outcomes;
}

const unknown = names.filter((name) => !Object.hasOwn(BENCHMARKS, name));
if (unknown.length > 0) {
  const known = Object.keys(BENCHMARKS).join(', ');
  console.error(`No benchmark is called ${unknown.join(' or ')}. There are: ${known}.`);
  console.error(`Only by name: ${ONLY_BY_NAME.join(', ')}.`);
  process.exitCode = 1;
} else {
  const before = load();
  const outcomes = await run();
  console.log(`\n${table(outcomes)}`);
  console.log(`\nLoad average on ${availableParallelism()} cores: ${before} before, ${load()} after.`);
  if (names.length === 0) {
    console.log(
      'Only by name: modelCoverage (simulated shooters, minutes); model also against lme4 (minutes).',
    );
  }
  const missed = outcomes.filter((outcome) => !passes(outcome)).map(({ what }) => what);
  if (missed.length > 0) {
    console.error(`\nMissed: ${missed.join('; ')}.`);
    process.exitCode = 1;
  }
}

/** Programs that wanted to run in the last minute. Well above the number of cores, every figure is too large. */
function load(): string {
  return (loadavg()[0] ?? 0).toFixed(1);
}
