import type { Round } from '../log/book.ts';
import { habitOf, type SeenHabit } from '../stats/habit.ts';
import { couldHaveShown, type Hindsight } from '../stats/hindsight.ts';
import { soFarOf } from '../stats/planning.ts';
import { planOf, type PlanTable } from '../stats/planTable.ts';
import type { Study } from '../stats/study.ts';

export { PLANNED_WEEKS, type PlanRow, type PlanTable } from '../stats/planTable.ts';
export type { Hindsight } from '../stats/hindsight.ts';
export type { SeenHabit } from '../stats/habit.ts';

/** What to shoot until a drop would show, and what the shots so far could have shown. */
export interface Outlook {
  readonly habit: SeenHabit;
  readonly table: PlanTable;
  readonly hindsight: Hindsight;
}

/** From one shooter's rounds and the study of them. */
export function outlookOf(rounds: readonly Round[], { index, have }: Pick<Study, 'index' | 'have'>): Outlook {
  const habit = habitOf(rounds);
  const spreads = index.kind === 'index' ? index.hyper.mean : undefined;
  return {
    habit,
    table: planOf(habit, spreads, soFarOf(index, have)),
    hindsight: couldHaveShown(rounds, index),
  };
}
