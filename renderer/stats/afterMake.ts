import { byText } from '../basics/order.ts';
import { oncePer } from '../basics/remembered.ts';
import { finish } from '../basics/steps.ts';
import type { Points, Probability } from '../basics/units.ts';
import type { Entry, Round } from '../log/book.ts';
import { type Tally, turnsUsed } from '../log/roundCells.ts';
import type { ByCondition } from './drop.ts';
import { fixedLength } from './fixedLength.ts';
import { zFor } from './proportion.ts';
import { READING_LEVEL } from './reading.ts';

/*
 * Does a make help the next shot? Split by the shot before, the shots of a round say that it hurts, even where nothing
 * depends on anything: of n shots with m makes in an order of pure chance, the rate after a make is (m − 1)/(n − 1) on
 * average and the rate after a miss m/(n − 1), since the make before is no longer among those that follow. In stretches of
 * five shots that tilt is 25 points. Miller & Sanjurjo, Econometrica 86:2019-2047 (2018), found it in the studies of the
 * hot hand. Spots that differ push the other way: a make says that this was an easy spot.
 */

/** The shots right after a make against those right after a miss. Points are positive = better after a make. */
export interface AfterMakeSplit {
  readonly afterMake: Tally;
  readonly afterMiss: Tally;
  /** The two rates as they stand, one minus the other: tilted by short stretches, mixed up by spots that differ. */
  readonly points: Points;
  /** What the shot before really changes, without that tilt and that mix. */
  readonly corrected: Points;
  /** Interval of {@link corrected} at {@link READING_LEVEL}. */
  readonly low: Points;
  readonly high: Points;
  /** Rounds with a stretch that says something. */
  readonly rounds: number;
}

/** Null where no stretch says anything. */
export type AfterMake = ByCondition<AfterMakeSplit | null>;

/**
 * Splits one shooter's shots by what the shot before did, at the same stop of the same round. Only stops that were shot
 * out and noted shot by shot count; spot, day and pressure are the same throughout such a stretch. Rounds of games
 * that end with the shots themselves, such as a streak or a race, are left out: of those only the unlucky are shot out.
 *
 * How it is corrected: given a stretch's shots n, misses u, first and last shot, every order is equally likely if nothing
 * depends on the shot before. Then m − 1 − (makes right after a make) is hypergeometric, u − c drawn from m − 1 makes and
 * u − 1 misses, c = misses among first and last. (Lay the makes out in runs; the misses go between them.) What was seen
 * beyond that mean, Σ (seen − mean) / Σ variance, is the change in log-odds after a make, to first order; times the mean
 * p(1 − p) it is points. On average 0 where a make changes nothing; a true 10 points reads 9 to 10
 * (tests/stats/afterMake.test.ts, with the interval's coverage).
 */
export function afterMake(rounds: Iterable<Round>): AfterMake {
  return finish(afterMakeInSteps(rounds));
}

/**
 * The same in short steps.
 *
 * @yields the share of the work that is done, 0 to 1
 */
export function* afterMakeInSteps(rounds: Iterable<Round>): Generator<Probability, AfterMake> {
  const sums = { relaxed: new Sum(), pressured: new Sum() };
  // In an order of their own, so that not even rounding depends on the order of the rounds.
  const all = [...rounds].filter(fixedLength).toSorted((a, b) => byText(a.id, b.id));
  for (const [at, round] of all.entries()) {
    sums[round.condition].add(stretchesOf(round));
    if (at % ROUNDS_A_STEP === 0) yield at / all.length;
  }
  return { relaxed: sums.relaxed.split(), pressured: sums.pressured.split() };
}

const ROUNDS_A_STEP = 100;

/** Consecutive shots from one spot: 1 = make, 0 = miss. */
type Stretch = readonly (0 | 1)[];

/** Those that say something; found once for each round. */
const stretchesOf = oncePer(({ stops, entries }: Round): readonly Stretch[] =>
  visitsOf(entries).flatMap((visit) => {
    const made = madeOf(visit);
    const stop = visit[0]?.stop ?? 0;
    const whole = made && turnsUsed(visit, stop) >= (stops[stop]?.attempts ?? Infinity);
    return whole && made.length > 1 ? [made] : [];
  }),
);

/** Entries that follow each other at one stop; a card that is shot round and round comes back to it later. */
function visitsOf(entries: readonly Entry[]): Entry[][] {
  const visits: Entry[][] = [];
  for (const entry of entries) {
    const last = visits.at(-1);
    if (last?.[0]?.stop === entry.stop) last.push(entry);
    else visits.push([entry]);
  }
  return visits;
}

/** Null where only a count was noted. A turn the clock took is no shot. */
function madeOf(entries: readonly Entry[]): Stretch | null {
  if (entries.some(({ kind }) => kind === 'count')) return null;
  return entries.flatMap((entry) => (entry.kind === 'shot' ? [entry.made ? 1 : 0] : []));
}

/** The stretches of one condition, added up. */
class Sum {
  private readonly afterMake = { makes: 0, attempts: 0 };
  private readonly afterMiss = { makes: 0, attempts: 0 };
  /** Makes right after a make, beyond what pure order gives; and the variance of that. */
  private excess = 0;
  private variance = 0;
  /** Σ m u / n and Σ (n − 1): their quotient is the mean p(1 − p). */
  private mixed = 0;
  private pairs = 0;
  private rounds = 0;

  add(stretches: readonly Stretch[]): void {
    const before = this.variance;
    for (const made of stretches) this.addStretch(made);
    if (this.variance > before) this.rounds += 1;
  }

  private addStretch(made: Stretch): void {
    const n = made.length;
    let makes = 0;
    let kept = 0;
    for (let at = 0; at < n; at += 1) {
      const one = made[at] as 0 | 1;
      makes += one;
      if (at === 0) continue;
      const before = made[at - 1];
      const tally = before === 1 ? this.afterMake : this.afterMiss;
      tally.makes += one;
      tally.attempts += 1;
      if (before === 1) kept += one;
    }
    const misses = n - makes;
    this.mixed += (makes * misses) / n;
    this.pairs += n - 1;
    // Fewer than four shots, or all alike, leave the order no room.
    if (n < 4 || makes === 0 || misses === 0) return;
    const missedEnds = 2 - (made[0] ?? 0) - (made.at(-1) ?? 0);
    const { mean, variance } = hypergeometric(misses - missedEnds, makes - 1, misses - 1);
    this.excess += kept - (makes - 1 - mean);
    this.variance += variance;
  }

  split(): AfterMakeSplit | null {
    const { afterMake: made, afterMiss: missed, rounds, variance } = this;
    if (variance === 0) return null;
    const scale = (100 * this.mixed) / this.pairs;
    const corrected = (scale * this.excess) / variance;
    const reach = (scale * zFor(READING_LEVEL)) / Math.sqrt(variance);
    return {
      afterMake: { ...made },
      afterMiss: { ...missed },
      points: 100 * (made.makes / made.attempts - missed.makes / missed.attempts),
      corrected,
      low: corrected - reach,
      high: corrected + reach,
      rounds,
    };
  }
}

/** Of `drawn` out of `ours + others` without putting back: how many are ours. */
function hypergeometric(drawn: number, ours: number, others: number): { mean: number; variance: number } {
  const all = ours + others;
  const share = ours / all;
  const mean = drawn * share;
  return { mean, variance: (mean * (1 - share) * (all - drawn)) / (all - 1) };
}
