import type { Probability } from '../basics/units.ts';
import { type DropEstimate, matchedDrop, simpleDrop } from './drop.ts';
import { at } from './matrix.ts';
import { READING_LEVEL } from './reading.ts';
import { logChoose } from './special.ts';

/*
 * Racks in which a coin tossed before the round says which balls count double. Nothing but chance tells a double ball from
 * a single one, so the difference of their make rates is what the stake does, without bias: no good day, no tiredness and
 * no spot can pass for it. Where the coin by chance gave more doubles to an easy stop, like is set beside like.
 */

/** One ball of such a rack. */
export interface CoinBall {
  /** Balls that are alike but for the coin: the stop, or the stop and the place in its rack. */
  readonly stop: string;
  readonly made: boolean;
  readonly double: boolean;
}

/** Nothing is said from fewer double balls: the span would be 20 points and more. Our own choice. */
export const LEAST_DOUBLES = 60;

/** What doubling takes off; points are positive = worse when the ball counts double. */
export interface DoubleBallDrop extends DropEstimate {
  /** The make rates behind it, over the same mix of stops. */
  readonly rates: { readonly single: Probability; readonly double: Probability };
  /** Balls from stops at which there were both. */
  readonly shots: { readonly single: number; readonly double: number };
  /** The same from all balls thrown together. */
  readonly together: DropEstimate;
  readonly chance: CoinChance;
}

/** How often the coin alone brings so much, where doubling does nothing. Small = hardly by chance. */
export interface CoinChance {
  /** So few makes on doubles, or fewer. */
  readonly worse: Probability;
  /** Makes on doubles at least as unlikely, on either side. */
  readonly either: Probability;
}

/**
 * Single minus double make rate, averaged over the stops with Mantel-Haenszel weights, and Newcombe's interval, as
 * `drop.ts` has them.
 *
 * @param balls one shooter's, from rounds in which a coin drew the double balls
 * @param level share of such intervals that hold the truth, between 0 and 1
 * @returns null where no stop had both
 */
export function doubleBallDrop(balls: readonly CoinBall[], level = READING_LEVEL): DoubleBallDrop | null {
  const stops = stopsOf(balls);
  const matched = matchedDrop(
    stops.map(({ single, double }) => ({ relaxed: single, pressured: double })),
    level,
  );
  const sum = (of: 'single' | 'double') => ({
    makes: stops.reduce((total, stop) => total + stop[of].makes, 0),
    attempts: stops.reduce((total, stop) => total + stop[of].attempts, 0),
  });
  const together = simpleDrop(sum('single'), sum('double'), level);
  if (!matched || !together) return null;
  const { points, low, high, rates, matchedShots } = matched;
  return {
    points,
    low,
    high,
    rates: { single: rates.relaxed, double: rates.pressured },
    shots: { single: matchedShots.relaxed, double: matchedShots.pressured },
    together,
    chance: coinChance(balls),
  };
}

/**
 * The exact randomisation test, stop by stop. Where doubling does nothing, each ball would have gone in or not whatever the
 * coin said. Given how many balls of a stop were double, every choice of so many was equally likely, whatever the coin's
 * share (one in five in our racks). So the makes on doubles are hypergeometric at each stop, and their sum follows by
 * convolution. Nothing is assumed of skill, days or balls that hang together. It is the exact conditional test of the
 * Mantel-Haenszel setting (for one stop: Fisher's).
 */
export function coinChance(balls: readonly CoinBall[]): CoinChance {
  let chances = Float64Array.of(1);
  let seen = 0;
  for (const { single, double } of stopsOf(balls)) {
    seen += double.makes;
    chances = convolved(
      chances,
      makesOnDoubles(single.attempts + double.attempts, single.makes + double.makes, double.attempts),
    );
  }
  // A hair above, so that rounding cannot tell equal chances apart.
  const here = at(chances, seen) * (1 + 1e-7);
  let [worse, either] = [0, 0];
  for (const [makes, chance] of chances.entries()) {
    if (makes <= seen) worse += chance;
    if (chance <= here) either += chance;
  }
  return { worse: Math.min(1, worse), either: Math.min(1, either) };
}

interface StopBalls {
  readonly single: { makes: number; attempts: number };
  readonly double: { makes: number; attempts: number };
}

function stopsOf(balls: readonly CoinBall[]): StopBalls[] {
  const stops = new Map<string, StopBalls>();
  for (const { stop, made, double } of balls) {
    const known = stops.get(stop) ?? {
      single: { makes: 0, attempts: 0 },
      double: { makes: 0, attempts: 0 },
    };
    stops.set(stop, known);
    const tally = double ? known.double : known.single;
    tally.attempts += 1;
    tally.makes += made ? 1 : 0;
  }
  return [...stops.values()];
}

/** Chance of 0, 1, … makes among `doubles` balls drawn from `all`, of which `makes` went in. */
function makesOnDoubles(all: number, makes: number, doubles: number): Float64Array {
  const ways = logChoose(all, doubles);
  return Float64Array.from({ length: Math.min(makes, doubles) + 1 }, (_, k) =>
    doubles - k > all - makes
      ? 0
      : Math.exp(logChoose(makes, k) + logChoose(all - makes, doubles - k) - ways),
  );
}

function convolved(a: Float64Array, b: Float64Array): Float64Array<ArrayBuffer> {
  const sum = new Float64Array(a.length + b.length - 1);
  for (const [i, one] of a.entries()) {
    for (const [j, other] of b.entries()) sum[i + j] = at(sum, i + j) + one * other;
  }
  return sum;
}
