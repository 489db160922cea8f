import type { Design } from './design.ts';

/** A point in the space of all unknowns. */
export interface State {
  /** In the order of the design's columns. */
  readonly shared: Float64Array;
  /** s and u of every week, alternating. */
  readonly weeks: Float64Array;
  /** b and c of every session, alternating. */
  readonly days: Float64Array;
}

/** The middle of the priors. */
export function priorState({ columns, weeks, sessions }: Design): State {
  return {
    shared: Float64Array.from(columns, ({ prior }) => prior.mean),
    weeks: new Float64Array(2 * weeks),
    days: new Float64Array(2 * sessions.count),
  };
}

/** state + share · step, as far as the step goes: one without days gives a state without days. */
export function moved(state: State, step: State, share: number): State {
  const along = (from: Float64Array, by: Float64Array): Float64Array => {
    const to = new Float64Array(by.length);
    for (let i = 0; i < to.length; i += 1) to[i] = (from[i] as number) + share * (by[i] as number);
    return to;
  };
  return {
    shared: along(state.shared, step.shared),
    weeks: along(state.weeks, step.weeks),
    days: along(state.days, step.days),
  };
}

/** Largest absolute number in a step. */
export function largest({ shared, weeks, days }: State): number {
  let most = 0;
  for (const part of [shared, weeks, days]) {
    for (let i = 0; i < part.length; i += 1) most = Math.max(most, Math.abs(part[i] as number));
  }
  return most;
}

/**
 * What a week adds to the log-odds of all its shots and of its pressured ones: its own s and u with the weekly
 * columns. Alternating, as the weeks are.
 *
 * @param shifts takes them
 */
export function weekShifts(
  { base, weekly }: Design,
  shared: Float64Array,
  weeks: Float64Array,
  shifts = new Float64Array(weeks.length),
): Float64Array {
  shifts.set(weeks);
  for (const [index, { side, values }] of weekly.entries()) {
    const coefficient = shared[base + index] as number;
    const offset = side === 'all' ? 0 : 1;
    for (let week = 0; week < values.length; week += 1) {
      shifts[2 * week + offset] =
        (shifts[2 * week + offset] as number) + coefficient * (values[week] as number);
    }
  }
  return shifts;
}
