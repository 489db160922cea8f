import { oncePerList } from '../basics/remembered.ts';
import type { Points, Probability } from '../basics/units.ts';
import type { ShotKind, SpotName } from '../court/spots.ts';
import type { Round } from '../log/book.ts';
import type { Condition } from '../log/events.ts';
import { roundCells, type Tally } from '../log/roundCells.ts';
import { newcombe, squareAndAdd, type Difference } from './difference.ts';
import { wilsonAt } from './proportion.ts';

/** What pressure takes off the make percentage, in percentage points; positive = worse under pressure. */
export interface DropEstimate {
  readonly points: Points;
  readonly low: Points;
  readonly high: Points;
}

/** One number for each condition. */
export type ByCondition<T> = Readonly<Record<Condition, T>>;

/** The shots that are like with like: one shooter, one spot, one kind of shot. */
export type Stratum = ByCondition<Tally>;

/** A {@link Stratum} that knows its place. */
export interface CellPair extends Stratum {
  readonly spot: SpotName;
  readonly shot: ShotKind;
}

/** A drop worked only from places shot both relaxed and pressured. */
export interface MatchedDrop extends DropEstimate {
  /** The make rates behind it, over the same mix of places in both conditions. */
  readonly rates: ByCondition<Probability>;
  /** Attempts it rests on. */
  readonly matchedShots: ByCondition<number>;
  /** Attempts at places seen in one condition alone, which say nothing about the drop. */
  readonly leftOut: ByCondition<number>;
  /** What the matched shots are worth, in shots of one single mix. */
  readonly effective: ByCondition<number>;
}

/**
 * The drop from all shots thrown together, by Newcombe's method 10. Right only where both conditions were shot from
 * the same mix of places; {@link matchedDrop} does not need that.
 *
 * @returns null where a condition has no attempt
 */
export function simpleDrop(relaxed: Tally, pressured: Tally, level: number): DropEstimate | null {
  if (relaxed.attempts === 0 || pressured.attempts === 0) return null;
  return inPoints(newcombe(relaxed.makes, relaxed.attempts, pressured.makes, pressured.attempts, level));
}

/**
 * The drop from like with like. Places seen in both conditions are averaged with Mantel-Haenszel weights
 * w ∝ nR·nP/(nR + nP), the same in both conditions, so that a changed mix of shots cannot pass for pressure.
 *
 * The interval: a condition's average P* = Σ w p has the variance Σ w² p̃(1 − p̃)/n, which is that of n* shots at
 * one rate, n* = P̃(1 − P̃) / Σ w² p̃(1 − p̃)/n; p̃ = (makes + ½)/(n + 1), so that 5 of 5 does not claim certainty. Then
 * Wilson's interval at (P*, n*) in each condition and Newcombe's square-and-add. With one place it is method 10
 * exactly. Its coverage by simulation: tests/bench/coverage.ts. Good and bad days are not in it, nor tiredness.
 *
 * @param strata one for each shooter, spot and kind of shot
 * @param level share of such intervals that hold the truth, between 0 and 1
 * @returns null where no place was seen in both conditions
 */
export function matchedDrop(strata: Iterable<Stratum>, level: number): MatchedDrop | null {
  const matched: Stratum[] = [];
  const matchedShots = { relaxed: 0, pressured: 0 };
  const leftOut = { relaxed: 0, pressured: 0 };
  for (const stratum of strata) {
    const both = stratum.relaxed.attempts > 0 && stratum.pressured.attempts > 0;
    if (both) matched.push(stratum);
    const shots = both ? matchedShots : leftOut;
    shots.relaxed += stratum.relaxed.attempts;
    shots.pressured += stratum.pressured.attempts;
  }
  if (matched.length === 0) return null;
  const raw = matched.map(({ relaxed, pressured }) => {
    const sum = relaxed.attempts + pressured.attempts;
    return (relaxed.attempts * pressured.attempts) / sum;
  });
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  const weights = raw.map((weight) => weight / total);
  const relaxed = averaged(
    matched.map((stratum) => stratum.relaxed),
    weights,
  );
  const pressured = averaged(
    matched.map((stratum) => stratum.pressured),
    weights,
  );
  const difference = squareAndAdd(
    { p: relaxed.p, ...wilsonAt(relaxed.p, relaxed.worth, level) },
    { p: pressured.p, ...wilsonAt(pressured.p, pressured.worth, level) },
  );
  return {
    ...inPoints(difference),
    rates: { relaxed: relaxed.p, pressured: pressured.p },
    matchedShots,
    leftOut,
    effective: { relaxed: relaxed.worth, pressured: pressured.worth },
  };
}

/** A {@link CellPair} that is still being added to. */
type OpenCell = CellPair & ByCondition<{ makes: number; attempts: number }>;

/** So many rounds are added up together once and for all. */
const BLOCK = 64;

/**
 * Makes of attempts by spot and kind of shot, in both conditions, over one shooter's rounds; in the order in which the
 * cells first appear. Long records are added up block by block: after one more round all blocks but the last are known.
 */
export function cellsOf(rounds: Iterable<Round>): ReadonlyMap<string, CellPair> {
  const all = [...rounds];
  return all.length <= BLOCK ? addedUp(all) : cellsOfRecord(all);
}

const cellsOfRecord = oncePerList((rounds: readonly Round[]): ReadonlyMap<string, CellPair> => {
  const cells = new Map<string, OpenCell>();
  for (let from = 0; from < rounds.length; from += BLOCK) {
    const block = cellsOfBlock(rounds.slice(from, from + BLOCK));
    for (const [key, { spot, shot, relaxed, pressured }] of block) {
      const cell = openCell(cells, key, spot, shot);
      cell.relaxed.makes += relaxed.makes;
      cell.relaxed.attempts += relaxed.attempts;
      cell.pressured.makes += pressured.makes;
      cell.pressured.attempts += pressured.attempts;
    }
  }
  return cells;
});

const cellsOfBlock = oncePerList(addedUp);

function addedUp(rounds: readonly Round[]): ReadonlyMap<string, CellPair> {
  const cells = new Map<string, OpenCell>();
  for (const round of rounds) {
    for (const { spot, shot, makes, attempts } of roundCells(round)) {
      const tally = openCell(cells, cellKey(spot, shot), spot, shot)[round.condition];
      tally.makes += makes;
      tally.attempts += attempts;
    }
  }
  return cells;
}

function openCell(cells: Map<string, OpenCell>, key: string, spot: SpotName, shot: ShotKind): OpenCell {
  let cell = cells.get(key);
  if (!cell) {
    cell = { spot, shot, relaxed: { makes: 0, attempts: 0 }, pressured: { makes: 0, attempts: 0 } };
    cells.set(key, cell);
  }
  return cell;
}

/** The key of {@link cellsOf}. */
export function cellKey(spot: SpotName, shot: ShotKind): string {
  return `${spot}\n${shot}`;
}

/** A condition's weighted make rate, and how many shots at one rate it is worth. */
function averaged(tallies: readonly Tally[], weights: readonly number[]): { p: number; worth: number } {
  let p = 0;
  let guarded = 0;
  let variance = 0;
  for (const [at, { makes, attempts }] of tallies.entries()) {
    const weight = weights[at] ?? 0;
    const rate = (makes + 0.5) / (attempts + 1);
    p += (weight * makes) / attempts;
    guarded += weight * rate;
    variance += (weight * weight * rate * (1 - rate)) / attempts;
  }
  return { p: Math.min(1, p), worth: (guarded * (1 - guarded)) / variance };
}

function inPoints({ difference, low, high }: Difference): DropEstimate {
  return { points: 100 * difference, low: 100 * low, high: 100 * high };
}
