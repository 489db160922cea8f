import type { Points } from '../basics/units.ts';
import type { Spreads } from './model/priors.ts';
import {
  chanceToShow,
  type Habit,
  type Need,
  NOTHING_YET,
  type Plan,
  needOf,
  type SoFar,
} from './planning.ts';
import { LEAST_PRESSURED, LEAST_SESSIONS } from './reading.ts';
import { type PlanOrder, POWER, TYPICAL_SPREADS } from './showing.ts';

/**
 * Why an order is not to be advised. `tiring` = pressure last: tired legs then look like pressure, however many shots.
 * `never both` = pressure on days of its own: no session of it has both conditions, so it leads to no verdict, and whoever
 * picks the day by feel compares good days with bad ones.
 */
export type Caution = 'tiring' | 'never both';

export interface PlanRow {
  readonly points: Points;
  readonly weeks: number;
  readonly order: PlanOrder;
  readonly need: Need;
  /** Goes with every figure of this order. Null for pairs alone. */
  readonly caution: Caution | null;
}

/** What to do, in the one order that is fair. */
export interface Advice {
  readonly points: Points;
  readonly order: 'pairs';
  readonly weeks: number;
  readonly need: Extract<Need, { kind: 'shots' }>;
  /** No more pressured shots than this shooter takes already, or than a third of all: it asks for no new life. */
  readonly comfortable: boolean;
}

export interface PlanTable {
  /** Every drop, order and span, in this nesting. */
  readonly rows: readonly PlanRow[];
  readonly aims: readonly {
    readonly points: Points;
    /** Null where no span of the table will do. */
    readonly advice: Advice | null;
    /**
     * Weeks until it shows if nothing is changed but the order, to pairs; 0 where it should show by
     * now, null where not within a year.
     */
    readonly weeksAsNow: number | null;
  }[];
}

export const PLANNED_POINTS: readonly Points[] = [10, 5];
export const PLANNED_WEEKS: readonly number[] = [4, 8, 12];
const ORDERS: readonly PlanOrder[] = ['pairs', 'last', 'own-day'];
const CAUTIONS: Readonly<Record<PlanOrder, Caution | null>> = {
  pairs: null,
  last: 'tiring',
  'own-day': 'never both',
};
/** Of all shots of a week, the share under pressure that is asked for lightly. Our own choice. */
const COMFORTABLE = 1 / 3;
const YEAR = 52;

/**
 * How many pressured shots a week, in what order and for how long, from a shooter's own habit, spreads and record.
 *
 * @throws RangeError where the habit's make rate is not above 0 and below 1
 */
export function planOf(
  habit: Habit,
  spreads: Spreads = TYPICAL_SPREADS,
  soFar: SoFar = NOTHING_YET,
): PlanTable {
  const rows = PLANNED_POINTS.flatMap((points) =>
    ORDERS.flatMap((order) =>
      PLANNED_WEEKS.map((weeks): PlanRow => {
        const need = needOf({ points, weeks, order, habit, spreads, soFar });
        return { points, weeks, order, need, caution: CAUTIONS[order] };
      }),
    ),
  );
  return {
    rows,
    aims: PLANNED_POINTS.map((points) => ({
      points,
      advice: adviceOf(
        points,
        rows.filter((row) => row.points === points && row.order === 'pairs'),
        habit,
      ),
      weeksAsNow: weeksAsNow({ points, order: 'pairs', habit, spreads, soFar }),
    })),
  };
}

/** The shortest span that is comfortable; where none is, the one with the fewest shots a week. */
function adviceOf(points: Points, pairs: readonly PlanRow[], habit: Habit): Advice | null {
  const { relaxedPerWeek: relaxed, pressuredPerWeek: now } = habit;
  const lightly = Math.max(now, COMFORTABLE * (relaxed + now));
  const ways = pairs.flatMap(({ weeks, need }): Advice[] => {
    if (need.kind === 'none') return [];
    const comfortable = need.pressuredPerWeek <= lightly;
    return [{ points, order: 'pairs', weeks, need, comfortable }];
  });
  return (
    ways.find(({ comfortable }) => comfortable) ??
    ways.toSorted((a, b) => a.need.pressuredPerWeek - b.need.pressuredPerWeek)[0] ??
    null
  );
}

function weeksAsNow(plan: Omit<Plan, 'weeks'>): number | null {
  const { habit, soFar = NOTHING_YET } = plan;
  for (let weeks = 0; weeks <= YEAR; weeks += 1) {
    const verdict =
      soFar.pressured + weeks * habit.pressuredPerWeek >= LEAST_PRESSURED &&
      soFar.sessions + weeks * habit.sessionsPerWeek >= LEAST_SESSIONS;
    if (verdict && chanceToShow({ ...plan, weeks }) >= POWER) return weeks;
  }
  return null;
}
