import type { Round } from '../log/book.ts';
import { habitOf, type SeenHabit } from './habit.ts';
import { couldHaveShown, type Hindsight } from './hindsight.ts';
import type { ChokeIndex, NoIndex } from './model/chokeIndex.ts';
import { soFarOf } from './planning.ts';
import { planOf, type PlanTable } from './planTable.ts';
import type { Evidence } from './reading.ts';

/** What to shoot until a drop would show, and what the shots so far could have shown. */
export interface Outlook {
  readonly habit: SeenHabit;
  readonly table: PlanTable;
  readonly hindsight: Hindsight;
}

/**
 * From one shooter's rounds, in any order, and the index they gave.
 *
 * @param have the shots the verdict rests on
 */
export function outlookOf(rounds: readonly Round[], index: ChokeIndex | NoIndex, have: Evidence): Outlook {
  const habit = habitOf(rounds);
  const spreads = index.kind === 'index' ? index.hyper.mean : undefined;
  return {
    habit,
    table: planOf(habit, spreads, soFarOf(index, have)),
    hindsight: couldHaveShown(rounds, index),
  };
}
