import { byText } from '../basics/order.ts';
import type { IsoDate } from '../basics/units.ts';
import type { ShotKind, SpotName } from '../court/spots.ts';
import type { Cell, Round } from '../log/book.ts';
import type { Condition } from '../log/events.ts';
import { roundCells } from '../log/roundCells.ts';

/** Makes of attempts in one condition from one spot, kind of shot and day. */
export interface DayCell extends Cell {
  readonly condition: Condition;
}

/** One day's shots. */
export interface DayTally {
  readonly date: IsoDate;
  readonly cells: readonly DayCell[];
}

/** One shooter's rounds, added up by day, spot, kind of shot and condition. In the order of the days. */
export function dayTallies(rounds: Iterable<Round>): DayTally[] {
  const days = new Map<IsoDate, Map<string, { -readonly [K in keyof DayCell]: DayCell[K] }>>();
  for (const round of rounds) {
    const { condition } = round;
    for (const cell of roundCells(round)) {
      const key = `${condition}\n${cell.spot}\n${cell.shot}`;
      const day = days.get(round.date) ?? new Map();
      days.set(round.date, day);
      const sum = day.get(key);
      if (sum) {
        sum.makes += cell.makes;
        sum.attempts += cell.attempts;
      } else {
        day.set(key, { ...cell, condition });
      }
    }
  }
  return [...days]
    .map(([date, cells]) => ({ date, cells: [...cells.values()] }))
    .toSorted((a, b) => byText(a.date, b.date));
}

/** A spot and a kind of shot. */
export interface Place {
  readonly spot: SpotName;
  readonly shot: ShotKind;
}
