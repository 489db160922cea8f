import type { Tally } from '../log/roundCells.ts';
import {
  matchedDrop,
  simpleDrop,
  type ByCondition,
  type DropEstimate,
  type MatchedDrop,
  type Stratum,
} from './drop.ts';
import { proportion, type Proportion } from './proportion.ts';
import { READING_LEVEL } from './reading.ts';

/** Level of the interval of the drop from all shots thrown together. */
export const SIMPLE_LEVEL = 0.95;

/** A tally with its make rate at {@link READING_LEVEL}; null without an attempt. */
export interface Rated extends Tally {
  readonly rate: Proportion | null;
}

/** What a heap of shots says about pressure, in the simple honest numbers. */
export interface Summary extends ByCondition<Rated> {
  /** Like with like, at {@link READING_LEVEL}; null where no place was shot in both conditions. */
  readonly drop: MatchedDrop | null;
  /** All shots thrown together, at {@link SIMPLE_LEVEL}; null where a condition has no shot. */
  readonly simple: DropEstimate | null;
}

/** Adds strata up. For several shooters, give the strata of each: then like is compared with like inside a shooter. */
export function summaryOf(strata: Iterable<Stratum>): Summary {
  const all = [...strata];
  const relaxed = added(all.map((stratum) => stratum.relaxed));
  const pressured = added(all.map((stratum) => stratum.pressured));
  return {
    relaxed: rated(relaxed),
    pressured: rated(pressured),
    drop: matchedDrop(all, READING_LEVEL),
    simple: simpleDrop(relaxed, pressured, SIMPLE_LEVEL),
  };
}

function added(tallies: readonly Tally[]): Tally {
  let makes = 0;
  let attempts = 0;
  for (const tally of tallies) {
    makes += tally.makes;
    attempts += tally.attempts;
  }
  return { makes, attempts };
}

function rated({ makes, attempts }: Tally): Rated {
  return { makes, attempts, rate: proportion(makes, attempts, READING_LEVEL) };
}
