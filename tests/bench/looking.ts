import { fileURLToPath } from 'node:url';

import { type Rng, rngFromSeed } from '../../renderer/basics/chance.ts';
import type { Round } from '../../renderer/log/book.ts';
import type { Condition } from '../../renderer/log/events.ts';
import { CLEAR_EVIDENCE, signFlipEvidence } from '../../renderer/stats/model/evidence.ts';
import { fitDrop, type FitOptions } from '../../renderer/stats/model/fitDrop.ts';
import { modelData } from '../../renderer/stats/model/modelData.ts';
import { playedPairs } from '../../renderer/stats/model/pairs.ts';
import { CLEAR, LIKELY, type Verdict, verdictOf } from '../../renderer/stats/model/verdict.ts';
import { evidenceOf } from '../../renderer/stats/reading.ts';
import { PLAIN, play, pressureFor, RELAXED_MIX, type World } from './modelWorld.ts';

/*
 * What looking after every session does to the index itself: three sessions a week for twelve weeks, in each a relaxed
 * round, a pair whose order a coin decides and a relaxed round, of 25 shots each; the index is worked out after each.
 *
 *     npx tsx tests/bench/looking.ts [shooters] [true drop]
 */

/** What one shooter saw. Sessions are counted from 1; Infinity where it never came. */
interface Looked {
  /** First session after which the chance of a drop stood above 95 and 99 in 100. */
  readonly likely: number;
  readonly clear: number;
  /** After which the verdict said a drop, of either sureness, and a clear one. */
  readonly called: number;
  readonly calledClear: number;
  /** After which the bets on the coin stood at 20. */
  readonly won: number;
  /** The drop on screen at the first call, points; null where there was none. */
  readonly atCall: number | null;
}

const WEEKS = 12;
const PER_WEEK = 3;
const SESSIONS = WEEKS * PER_WEEK;
const ROUNDS = 4;

const R: Condition = 'relaxed';
const P: Condition = 'pressured';

/** @param points the true drop */
function worldOf(points: number): World {
  return {
    ...PLAIN,
    weeks: WEEKS,
    sessions: PER_WEEK,
    plan: (rng) => (rng.chance(0.5) ? [R, R, P, R] : [R, P, R, R]),
    pressuredMix: RELAXED_MIX,
    pressure: (week) => pressureFor(points, (PLAIN.skillRise * week) / 26),
  };
}

/** What stands on screen after each session of one shooter, in order. */
export function* looks(points: number, rng: Rng, options: FitOptions = {}): Generator<Seen> {
  const rounds = play(worldOf(points), rng).rounds.map(inPair);
  for (let session = 1; session <= SESSIONS; session += 1) {
    yield seenAfter(rounds.slice(0, ROUNDS * session), options);
  }
}

/** One shooter of a true drop. */
function look(points: number, rng: Rng): Looked {
  const after = [...looks(points, rng)];
  const first = (holds: (seen: Seen) => boolean): number => {
    const at = after.findIndex(holds);
    return at === -1 ? Infinity : at + 1;
  };
  const called = first(({ verdict }) => verdict.kind === 'drop');
  return {
    likely: first(({ chance }) => chance > LIKELY),
    clear: first(({ chance }) => chance > CLEAR),
    called,
    calledClear: first(({ verdict }) => verdict.kind === 'drop' && verdict.sure === 'clear'),
    won: first(({ won }) => won),
    atCall: after[called - 1]?.points ?? null,
  };
}

interface Seen {
  /** Of a drop. */
  readonly chance: number;
  readonly points: number;
  readonly verdict: Verdict;
  /** Whether the bets on the coin ever stood at 20. */
  readonly won: boolean;
}

function seenAfter(rounds: readonly Round[], options: FitOptions): Seen {
  const { index } = fitDrop(modelData(rounds), options);
  if (index.kind === 'none') throw new Error(`no index: ${index.reason}`);
  const evidence = signFlipEvidence(playedPairs(rounds).played);
  return {
    chance: index.overall.probability,
    points: index.overall.points,
    verdict: verdictOf(index, evidence, evidenceOf(rounds)),
    won: evidence.highest >= CLEAR_EVIDENCE,
  };
}

/** The second and third round of a session are a pair. */
function inPair(round: Round, index: number): Round {
  const place = index % ROUNDS;
  const pair =
    place === 1 || place === 2
      ? ({ id: `pair ${round.session}`, place: place === 1 ? 1 : 2 } as const)
      : null;
  return { ...round, startedAt: index, pair };
}

/** Several shooters of a true drop. */
function lookAll(points: number, shooters: number, seed: number): Looked[] {
  return Array.from({ length: shooters }, (_, shooter) => look(points, rngFromSeed(seed + shooter)));
}

/** Share of the shooters who ever saw it. */
function everSaw(looked: readonly Looked[], what: Exclude<keyof Looked, 'atCall'>): number {
  return looked.filter((one) => one[what] <= SESSIONS).length / looked.length;
}

/** Mean drop on screen at the first call, points. */
function meanAtCall(looked: readonly Looked[]): number {
  const told = looked.flatMap(({ atCall }) => (atCall === null ? [] : [atCall]));
  return told.reduce((sum, points) => sum + points, 0) / told.length;
}

/** Prints what shooters of three true drops see. */
function run(shooters: number, drops: readonly number[] = [0, 5, 10]): void {
  console.log(`${shooters} shooters who look after each of ${SESSIONS} sessions; ever seen`);
  console.log('drop  chance > 95  > 99    called  called clear  coin at 20  drop at first call');
  for (const points of drops) {
    const looked = lookAll(points, shooters, 7000);
    const percent = (what: Parameters<typeof everSaw>[1]): string =>
      `${(100 * everSaw(looked, what)).toFixed(1)} %`;
    console.log(
      [
        String(points).padEnd(6),
        percent('likely').padEnd(13),
        percent('clear').padEnd(8),
        percent('called').padEnd(8),
        percent('calledClear').padEnd(14),
        percent('won').padEnd(12),
        meanAtCall(looked).toFixed(1),
      ].join(''),
    );
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const only = process.argv[3];
  run(Number(process.argv[2] ?? 100), only === undefined ? undefined : [Number(only)]);
}
