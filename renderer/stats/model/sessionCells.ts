import { parseIsoDate } from '../../basics/days.ts';
import { oncePerList } from '../../basics/remembered.ts';
import type { IsoDate } from '../../basics/units.ts';
import type { Round } from '../../log/book.ts';
import { HIGHEST_LEVEL, INGREDIENTS, pressureLevel } from '../../pressure/ingredients.ts';
import type { Place } from '../dayTallies.ts';
import { CellBuilder, type CellColumns } from './cellBuilder.ts';
import { isFelt, type NervesLine } from './felt.ts';
import { UNKNOWN_DOSE } from './priors.ts';
import { placeRounds, type PlacedRound } from './sessionOrder.ts';

/** The mask of a cell of which the ingredients are not known. */
export const UNKNOWN_INGREDIENTS = 0xffff;

/** Why a round is not in the cells. */
export type LeftOutReason = 'no shot' | 'no such day' | 'no pressure felt';

/** The cells of one session. They do not depend on other sessions, so that they can be kept when those change. */
export interface SessionCells {
  /** Null where no round of it is in the cells. */
  readonly date: IsoDate | null;
  /** `place` counts in this session's own places; bit i of `mask` stands for the i-th of all ingredients. */
  readonly cells: CellColumns;
  readonly places: readonly Place[];
  /** Ingredients that were on in some round, as in a mask. */
  readonly ingredients: number;
  readonly leftOut: readonly {
    readonly reason: LeftOutReason;
    readonly round: Round['id'];
    readonly shots: number;
  }[];
}

/**
 * The cells of one session's rounds; worked out once, as long as they stay the same.
 *
 * @param feltAbove given, pressured rounds in which nerves did not rise above this line are left out
 */
export function sessionCells(rounds: readonly Round[], feltAbove?: NervesLine): SessionCells {
  const allFelt = feltAbove === undefined || rounds.every((round) => isFelt(round, feltAbove) !== false);
  return allFelt ? withAll(rounds) : cellsFrom(rounds, feltAbove);
}

const withAll = oncePerList((rounds: readonly Round[]) => cellsFrom(rounds));

function cellsFrom(rounds: readonly Round[], feltAbove?: NervesLine): SessionCells {
  const builder = new CellBuilder();
  const leftOut: SessionCells['leftOut'][number][] = [];
  let date: IsoDate | null = null;
  let ingredients = 0;
  // Placed before anything is left out: shots that are not counted tire all the same.
  for (const placed of placeRounds(rounds)) {
    const { round, attempts } = placed;
    const reason = reasonToLeave(placed, feltAbove);
    if (reason !== null) {
      leftOut.push({ reason, round: round.id, shots: attempts });
      continue;
    }
    date ??= round.date;
    const mask = maskOf(round);
    if (mask !== UNKNOWN_INGREDIENTS) ingredients |= mask;
    builder.add(placed, { pressured: round.condition === 'pressured', dose: doseOf(round), mask });
  }
  return { date, cells: builder.columns(), places: builder.places, ingredients, leftOut };
}

function reasonToLeave(
  { round, attempts }: PlacedRound,
  feltAbove: NervesLine | undefined,
): LeftOutReason | null {
  if (attempts === 0) return 'no shot';
  if (parseIsoDate(round.date) === null) return 'no such day';
  return feltAbove !== undefined && isFelt(round, feltAbove) === false ? 'no pressure felt' : null;
}

/** Pressure as a fraction of the highest level; 0.5 where it was not noted, as in a file. */
function doseOf({ condition, pressure }: Round): number {
  if (condition === 'relaxed') return 0;
  return pressure ? pressureLevel(pressure) / HIGHEST_LEVEL : UNKNOWN_DOSE;
}

function maskOf({ condition, pressure }: Round): number {
  if (condition === 'relaxed') return 0;
  if (!pressure) return UNKNOWN_INGREDIENTS;
  return pressure.ingredients.reduce((mask, one) => mask | (1 << INGREDIENTS.indexOf(one)), 0);
}
