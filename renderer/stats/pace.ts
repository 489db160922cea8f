import { daysBetween } from '../basics/days.ts';
import type { IsoDate, Probability, Seconds } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import { HALF_LIFE, oldestThatCounts } from './lately.ts';
import { type Span, spansOf, withoutStops } from './paceSpans.ts';
import { incompleteGamma } from './special.ts';

/*
 * How long a shooter takes over a shot. Of round i with n shots in T seconds, for a mean of its own that differs from
 * round to round (another card, somebody to rebound or nobody):
 *
 *     ln(T/n) ~ N(ln μ, τ² + c²/n)
 *
 * c is how one shot differs from the next, as a share of the mean. A normal prior for ln μ, half-normal(0.25) for τ,
 * which is integrated over a grid. As everywhere, what was shot 30 days ago counts for half.
 */

/** How long one shooter takes from one shot to the next. */
export interface Pace {
  /** Mean time for a shot. */
  readonly seconds: Seconds;
  /** Standard deviation of one shot's time around its round's mean. */
  readonly spread: Seconds;
  /** Standard deviation of the next round's mean: rounds that differ, and a shooter who is not known well. */
  readonly doubt: Seconds;
  /** Shots of the shooter's own it rests on. */
  readonly shots: number;
  /** False where these are too few, or too old: then it is mostly the usual pace, or that of the other rounds. */
  readonly own: boolean;
}

export interface Paces {
  readonly overall: Pace;
  readonly relaxed: Pace;
  readonly pressured: Pace;
  /** Rounds against a round clock. */
  readonly onClock: Pace;
}

/** Where nothing is known: a shot in seven seconds, 3 to 16 in nine shooters of ten. Common practice, no source. */
const USUAL = { mean: Math.log(7), sd: 0.5, cv: 0.4 };
/** How many shots that usual spread is worth. */
const USUAL_SHOTS = 10;
/** How far one kind of rounds may lie from the others, as a share: 0.2 is a fifth. Our own choice. */
const KINDS_DIFFER = 0.2;
/** So many shots, lately, make a pace the shooter's own. */
const LEAST_SHOTS = 20;
const ROUND_SDS = Array.from({ length: 10 }, (_, step) => 0.05 + 0.06 * step);
const ROUND_SD_SCALE = 0.25;

interface Prior {
  /** Of ln μ. */
  readonly mean: number;
  readonly sd: number;
  readonly cv: number;
}

interface Fit extends Prior {
  /** τ². */
  readonly between: number;
  readonly shots: number;
  /** Shots, older ones for less. */
  readonly lately: number;
}

interface Timed {
  readonly round: Round;
  /** What it counts for, 0 to 1. */
  readonly weight: number;
  readonly spans: readonly Span[];
}

/**
 * One shooter's pace. A shooter hurries on a round clock, so that has a figure of its own, and relaxed and pressured
 * rounds have theirs; each leans on the rest where its own rounds are few. The clock cuts a round's last shot off, and
 * rather a long one than a short one, so that a minute on a clock reads 2 in 100 too fast, half a minute 4.
 *
 * @param rounds one shooter's, without those in which others shoot in between; rounds after `on` are left out
 * @param on the day asked for, from which evidence is aged
 */
export function paceOf(rounds: Iterable<Round>, on: IsoDate): Paces {
  const timed = timedRounds(rounds, on);
  const ofKind = (is: (round: Round) => boolean): Pace => {
    const rest = fit(
      timed.filter(({ round }) => !is(round)),
      USUAL,
    );
    const from = { ...rest, sd: Math.hypot(rest.sd, KINDS_DIFFER) };
    return paceFrom(
      fit(
        timed.filter(({ round }) => is(round)),
        from,
      ),
    );
  };
  return {
    overall: paceFrom(fit(timed, USUAL)),
    relaxed: ofKind(({ condition }) => condition === 'relaxed'),
    pressured: ofKind(({ condition }) => condition === 'pressured'),
    onClock: ofKind(({ pressure }) => pressure?.clock?.kind === 'round'),
  };
}

function timedRounds(rounds: Iterable<Round>, on: IsoDate): Timed[] {
  const oldest = oldestThatCounts(on);
  return [...rounds]
    .filter(({ date }) => date >= oldest && date <= on)
    .map((round) => ({
      round,
      weight: 2 ** (-daysBetween(round.date, on) / HALF_LIFE),
      spans: withoutStops(spansOf(round)),
    }));
}

function fit(timed: readonly Timed[], prior: Prior): Fit {
  const means: { y: number; shots: number; weight: number }[] = [];
  let [squares, free] = [USUAL_SHOTS * prior.cv ** 2, USUAL_SHOTS];
  for (const { weight, spans } of timed) {
    if (spans.length === 0) continue;
    const shots = spans.reduce((sum, span) => sum + span.shots, 0);
    const mean = spans.reduce((sum, span) => sum + span.seconds, 0) / shots;
    means.push({ y: Math.log(mean), shots, weight });
    for (const span of spans) {
      squares += (weight * (span.seconds - span.shots * mean) ** 2) / (span.shots * mean ** 2);
    }
    free += weight * (spans.length - 1);
  }
  const cc = squares / free;
  const grid = ROUND_SDS.map((tau) => {
    let precision = 1 / prior.sd ** 2;
    let sum = prior.mean * precision;
    let logs = 0;
    for (const { y, shots, weight } of means) {
      const worth = weight / (tau ** 2 + cc / shots);
      precision += worth;
      sum += worth * y;
      logs += weight * Math.log(tau ** 2 + cc / shots);
    }
    const mean = sum / precision;
    let far = (mean - prior.mean) ** 2 / prior.sd ** 2 + (tau / ROUND_SD_SCALE) ** 2;
    for (const { y, shots, weight } of means) far += (weight * (y - mean) ** 2) / (tau ** 2 + cc / shots);
    return { tau, mean, variance: 1 / precision, log: -(logs + far + Math.log(precision)) / 2 };
  });
  const best = Math.max(...grid.map(({ log }) => log));
  const total = grid.reduce((sum, { log }) => sum + Math.exp(log - best), 0);
  const over = (of: (node: (typeof grid)[number]) => number): number =>
    grid.reduce((sum, node) => sum + (Math.exp(node.log - best) / total) * of(node), 0);
  const mean = over((node) => node.mean);
  return {
    mean,
    sd: Math.sqrt(over((node) => node.variance + (node.mean - mean) ** 2)),
    cv: Math.sqrt(cc),
    between: over(({ tau }) => tau ** 2),
    shots: means.reduce((sum, { shots }) => sum + shots, 0),
    lately: means.reduce((sum, { shots, weight }) => sum + weight * shots, 0),
  };
}

function paceFrom({ mean, sd, cv, between, shots, lately }: Fit): Pace {
  const variance = sd ** 2 + between;
  const seconds = Math.exp(mean + variance / 2);
  return {
    seconds,
    spread: cv * seconds,
    doubt: seconds * Math.sqrt(Math.expm1(variance)),
    shots,
    own: lately >= LEAST_SHOTS,
  };
}

/** From the hand to the rim: a free throw flies 0.9 s, a three 1.2 s (worked from the throw's parabola). */
const FLIGHT: Seconds = 1;
/** From the buzzer that starts the clock to the first release, ball in hand. Common practice, no source. */
const READY: Seconds = 2;

/**
 * For each of the next turns, the chance that there is still time for it once there was time for the one before. A turn
 * has time if the ball leaves the hand before the buzzer: a shot in the air at the buzzer counts, though it is noted
 * after it. The moment of the j-th release is taken for a gamma variable with the mean and the variance that j shots'
 * times have, the doubt about the shooter's pace included, less one flight.
 *
 * Placing it in the solver's `TimeLeft`, which is counted by turns of the game: after k turns
 * `[...Array(k).fill(1), ...timeFor(pace, left, longest − k)]`, with the time left when the last shot was noted.
 *
 * @param left on the round clock
 * @param turns how many further turns
 * @param from `start`: the clock starts with the ball in hand, so the first turn needs no fetching
 * @returns `turns` chances
 */
export function timeFor(
  { seconds, spread, doubt }: Pace,
  left: Seconds,
  turns: number,
  from: 'start' | 'shot' = 'shot',
): Probability[] {
  const chances: Probability[] = [];
  const flight = Math.min(FLIGHT, seconds / 2);
  let before = 1;
  for (let turn = 1; turn <= turns; turn += 1) {
    const fetched = from === 'start' ? turn - 1 : turn;
    const mean = fetched * seconds + (from === 'start' ? READY : -flight);
    const ready = from === 'start' ? (READY / 2) ** 2 : 0;
    const variance = ready + fetched * spread ** 2 + (fetched * doubt) ** 2;
    const reached =
      left <= 0 ? 0 : Math.min(before, incompleteGamma(mean ** 2 / variance, (left * mean) / variance));
    chances.push(before > 0 ? reached / before : 0);
    before = reached;
  }
  return chances;
}
