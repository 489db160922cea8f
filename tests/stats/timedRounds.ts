import type { Rng } from '../../renderer/basics/chance.ts';
import type { Entry, Round } from '../../renderer/log/book.ts';
import type { Condition } from '../../renderer/log/events.ts';
import { roundOf } from './rounds.ts';

/** A round whose shots were noted so many seconds apart, the first a second after the start. */
export function timedRound(
  gaps: readonly number[],
  {
    condition = 'relaxed',
    date = '2026-06-01',
    clock,
  }: { condition?: Condition; date?: string; clock?: 'shot' | 'round' } = {},
): Round {
  let at = 0;
  const entries = [1, ...gaps].map((gap, n): Entry => {
    at += Math.round(1000 * gap);
    return { kind: 'shot', id: `${n}`, at, stop: 0, made: true, side: null };
  });
  const pressure = clock
    ? {
        ingredients: [],
        stake: null,
        mark: null,
        clock: { kind: clock, seconds: 60 },
        crowd: false,
        showChance: true,
        seed: 1,
      }
    : null;
  return { ...roundOf(condition, [], { date }), entry: 'each-shot', entries, pressure };
}

/** How a simulated shooter's shots take their time. */
export interface Tempo {
  /** Log of the mean, and the standard deviation of rounds around it. */
  readonly mean: number;
  readonly between: number;
  /** Of one shot, as a share of its round's mean. */
  readonly cv: number;
  /** One ball in ten rolls away and takes two and a half times as long. */
  readonly rollsAway?: boolean;
  /** Share of shots after which something else takes 20 to 90 s. */
  readonly stops?: number;
}

/** The mean of one more round. */
export function roundMean({ mean, between }: Tempo, rng: Rng): number {
  return Math.exp(mean + between * rng.normal());
}

/** One shot's time: log-normal, never under 1.2 s, its mean that of the round. */
export function shotTime(mean: number, { cv, rollsAway = false, stops = 0 }: Tempo, rng: Rng): number {
  const s = Math.sqrt(Math.log(1 + cv ** 2));
  const rolls = rollsAway ? (rng.chance(0.1) ? 2.5 : 1) / 1.15 : 1;
  const stop = rng.chance(stops) ? 20 + 70 * rng.next() : 0;
  return Math.max(1.2, rolls * mean * Math.exp(s * rng.normal() - (s * s) / 2)) + stop;
}

/** Rounds of 25 shots. */
export function simulatedRounds(count: number, tempo: Tempo, rng: Rng): Round[] {
  return Array.from({ length: count }, () => {
    const mean = roundMean(tempo, rng);
    return timedRound(Array.from({ length: 24 }, () => shotTime(mean, tempo, rng)));
  });
}
