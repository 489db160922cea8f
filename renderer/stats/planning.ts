import type { Points, Probability } from '../basics/units.ts';
import type { ByCondition } from './drop.ts';
import type { ChokeIndex, NoIndex } from './model/chokeIndex.ts';
import type { Spreads } from './model/priors.ts';
import { LEAST_PRESSURED, LEAST_SESSIONS, type Evidence } from './reading.ts';
import {
  chanceAt,
  type PlanOrder,
  POWER,
  priorVariance,
  ratesOf,
  TYPICAL_SPREADS,
  varianceOf,
} from './showing.ts';

/*
 * How much shooting it takes until a drop shows. That the promised chances come true in the model itself is checked by
 * simulation, tests/bench/planPower.ts.
 */

/** How a shooter trains. */
export interface Habit {
  readonly sessionsPerWeek: number;
  /** Shots. */
  readonly relaxedPerWeek: number;
  readonly pressuredPerWeek: number;
  /** Relaxed make rate, above 0 and below 1. */
  readonly relaxedRate: Probability;
}

/** What the record holds already. */
export interface SoFar {
  /** Of the estimate from its shots, log-odds squared; Infinity where there is none. */
  readonly variance: number;
  readonly pressured: number;
  /** Sessions with both conditions. */
  readonly sessions: number;
}

export const NOTHING_YET: SoFar = { variance: Infinity, pressured: 0, sessions: 0 };

export interface Plan {
  /** The true drop, above 0. */
  readonly points: Points;
  readonly weeks: number;
  readonly order: PlanOrder;
  readonly habit: Habit;
  /** Learnt from the shooter's record; {@link TYPICAL_SPREADS} unless told. */
  readonly spreads?: Spreads;
  readonly soFar?: SoFar;
}

/** Shots a week that show a drop, or why there are none. */
export type Need =
  | {
      readonly kind: 'shots';
      /** In fives. 0 where the record should show such a drop by now. */
      readonly pressuredPerWeek: number;
      /** As usual, but never fewer than pressured ones. */
      readonly relaxedPerWeek: number;
      /** Chance that the drop shows. */
      readonly chance: Probability;
    }
  | {
      /**
       * `rate too low` = it cannot drop that far; `too few sessions` = no verdict before {@link LEAST_SESSIONS} with both
       * conditions; `never both` = the same, and no session of this plan is one; `days` = good and bad days would hide it from any number of shots; `too many shots` = it would take
       * more than {@link MOST_PER_WEEK}. The last two pass with more weeks or with more sessions.
       */
      readonly kind: 'none';
      readonly reason: 'rate too low' | 'too few sessions' | 'never both' | 'days' | 'too many shots';
    };

/** No plan asks for more pressured shots a week; with as many relaxed ones that is 600. Our own choice. */
export const MOST_PER_WEEK = 300;
const STEP = 5;
/**
 * What a relaxed shot is worth that was not taken in the same stretch of a session as a pressured one: the model must
 * learn the rise and fall of a session from these shots too. Fitted to what the model does in tests/bench/planPower.ts.
 */
const APART: Readonly<Record<PlanOrder, number>> = { pairs: 1 / 3, 'own-day': 1 / 3, last: 1 / 6 };

/**
 * The chance that a true drop shows by the end of a plan; 0 where the rate is too low to drop that far.
 *
 * @throws RangeError unless points are above 0, weeks 0 or more, and the make rate lies between 0 and 1
 */
export function chanceToShow(plan: Plan): Probability {
  const { weeks, order, habit, spreads = TYPICAL_SPREADS, soFar = NOTHING_YET } = plan;
  if (!(weeks >= 0)) throw new RangeError(`Plan for 0 weeks or more, not ${weeks}`);
  const rates = ratesOf(plan.points, habit.relaxedRate);
  if (!rates) return 0;
  const { relaxedPerWeek, pressuredPerWeek, sessionsPerWeek } = habit;
  const beside = order === 'pairs' ? Math.min(relaxedPerWeek, pressuredPerWeek) : 0;
  const shots = {
    relaxed: weeks * (beside + APART[order] * (relaxedPerWeek - beside)),
    pressured: weeks * pressuredPerWeek,
  };
  const planned = varianceOf({ order, shots, days: daysOf(order, weeks, sessionsPerWeek) }, rates, spreads);
  return chanceAt(rates, 1 / (1 / planned + 1 / soFar.variance), spreads);
}

/**
 * The fewest pressured shots a week with which a drop shows by the end of a plan with a chance of `power`. What the habit
 * says of pressured shots is not looked at.
 *
 * @throws RangeError as {@link chanceToShow} does
 */
export function needOf(plan: Plan, power: Probability = POWER): Need {
  const { points, weeks, order, habit, soFar = NOTHING_YET } = plan;
  if (!ratesOf(points, habit.relaxedRate)) return { kind: 'none', reason: 'rate too low' };
  const withShots = (pressured: number): { relaxed: number; chance: Probability } => {
    const relaxed = Math.max(habit.relaxedPerWeek, pressured);
    const shot = { ...habit, relaxedPerWeek: relaxed, pressuredPerWeek: pressured };
    return { relaxed, chance: chanceToShow({ ...plan, habit: shot }) };
  };
  // A day of its own makes no session with both conditions.
  const never = order === 'own-day';
  const sessions = soFar.sessions + (never ? 0 : weeks * habit.sessionsPerWeek);
  if (sessions < LEAST_SESSIONS) return { kind: 'none', reason: never ? 'never both' : 'too few sessions' };
  for (let pressured = 0; pressured <= MOST_PER_WEEK; pressured += STEP) {
    const { relaxed, chance } = withShots(pressured);
    const verdict = soFar.pressured + weeks * pressured >= LEAST_PRESSURED;
    if (verdict && chance >= power) {
      return { kind: 'shots', pressuredPerWeek: pressured, relaxedPerWeek: Math.round(relaxed), chance };
    }
  }
  return { kind: 'none', reason: withShots(1e9).chance < power ? 'days' : 'too many shots' };
}

/** What is on the record, for a plan to go on from. */
export function soFarOf(index: ChokeIndex | NoIndex, have: Evidence): SoFar {
  const counts = { pressured: have.pressured.attempts, sessions: have.sessions };
  if (index.kind === 'none') return { ...counts, variance: Infinity };
  // The posterior's precision is the prior's and the shots'.
  const precision = 1 / index.logit.sd ** 2 - 1 / priorVariance(index.hyper.mean);
  return { ...counts, variance: precision > 0 ? 1 / precision : Infinity };
}

/** A day of its own takes one session a week; every other one where there are fewer than two. */
function daysOf(order: PlanOrder, weeks: number, sessionsPerWeek: number): ByCondition<number> {
  const all = weeks * sessionsPerWeek;
  if (order !== 'own-day') return { relaxed: all, pressured: all };
  const pressured = Math.min(weeks, all / 2);
  return { relaxed: all - pressured, pressured };
}
