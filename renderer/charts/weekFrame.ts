import { addDays, daysBetween, isoWeek } from '../basics/days.ts';
import { present } from '../basics/invariant.ts';
import type { IsoDate } from '../basics/units.ts';

/* The time axis of a season: whole ISO weeks side by side, those without shots too. */

export interface WeekFrame {
  /** The Monday of every week from the first to the last day, none left out. */
  readonly mondays: readonly IsoDate[];
  /** Width of the whole drawing. */
  readonly width: number;
  readonly weekWidth: number;
  /** Left edge of the week with this index. */
  readonly weekX: (index: number) => number;
  /** Middle of a day. */
  readonly dayX: (date: IsoDate) => number;
  /** Middle of the week a day lies in. */
  readonly weekMiddleX: (date: IsoDate) => number;
  /** Every how many weeks a label has room. */
  readonly labelEvery: number;
}

interface Room {
  /** Width there is. */
  readonly width: number;
  /** Left and right of the weeks, so that a mark on a Monday is not cut. */
  readonly edge: number;
  /** A week is never narrower; the drawing grows wider than the room instead. */
  readonly leastWeek: number;
  /** Width of a label with the gap beside it. */
  readonly labelWidth: number;
}

/** @param dates days with something on them, in order, at least one */
export function weekFrame(dates: readonly IsoDate[], room: Room): WeekFrame {
  const first = mondayOf(present(dates[0], 'a first day'));
  const last = mondayOf(present(dates.at(-1), 'a last day'));
  const weeks = daysBetween(first, last) / 7 + 1;
  const mondays = Array.from({ length: weeks }, (_, week) => addDays(first, 7 * week));
  const weekWidth = Math.max(room.leastWeek, (room.width - 2 * room.edge) / weeks);
  const weekX = (index: number) => room.edge + index * weekWidth;
  return {
    mondays,
    weekWidth,
    width: Math.max(room.width, weeks * weekWidth + 2 * room.edge),
    weekX,
    dayX: (date) => room.edge + ((daysBetween(first, date) + 0.5) / 7) * weekWidth,
    weekMiddleX: (date) => weekX(daysBetween(first, mondayOf(date)) / 7 + 0.5),
    labelEvery: Math.ceil(room.labelWidth / weekWidth),
  };
}

/** The Monday of the ISO week a day lies in. */
export function mondayOf(date: IsoDate): IsoDate {
  return addDays(date, 1 - isoWeek(date).day);
}
