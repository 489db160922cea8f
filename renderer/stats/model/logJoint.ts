import type { Design } from './design.ts';
import { type Spreads, WEEK_CORRELATION } from './priors.ts';
import { type State, weekShifts } from './state.ts';

/**
 * ln p(makes | state) + ln p(state | spreads), binomial coefficients and powers of 2π left out: what Newton's method
 * climbs, said once more without its shortcuts.
 */
export function logJoint(design: Design, spreads: Spreads, state: State): number {
  const { rows, pressured, makes, attempts, sessions, columns, weeks } = design;
  const shifts = weekShifts(design, state.shared, state.weeks);
  let sum = 0;
  for (let day = 0; day < sessions.count; day += 1) {
    const week = sessions.week[day] as number;
    const level = (shifts[2 * week] as number) + (state.days[2 * day] as number);
    const press = (shifts[2 * week + 1] as number) + (state.days[2 * day + 1] as number);
    for (let cell = sessions.start[day] as number; cell < (sessions.start[day + 1] as number); cell += 1) {
      let eta = level + (pressured[cell] as number) * press;
      for (let k = rows.start[cell] as number; k < (rows.start[cell + 1] as number); k += 1) {
        eta += (rows.value[k] as number) * (state.shared[rows.column[k] as number] as number);
      }
      const softplus = Math.max(eta, 0) + Math.log1p(Math.exp(-Math.abs(eta)));
      sum += (makes[cell] as number) * eta - (attempts[cell] as number) * softplus;
    }
    sum -= (state.days[2 * day] as number) ** 2 / (2 * spreads.day ** 2);
    sum -= (state.days[2 * day + 1] as number) ** 2 / (2 * spreads.dayPressure ** 2);
  }
  for (const [i, { prior }] of columns.entries()) {
    sum -= ((state.shared[i] as number) - prior.mean) ** 2 / (2 * prior.sd ** 2);
  }
  for (let week = 0; week < weeks; week += 1) {
    const s = state.weeks[2 * week] as number;
    const u = state.weeks[2 * week + 1] as number;
    const sBefore = week === 0 ? 0 : (state.weeks[2 * week - 2] as number);
    const uBefore = week === 0 ? 0 : (state.weeks[2 * week - 1] as number);
    const forgotten = week === 0 ? 1 : 1 - WEEK_CORRELATION ** 2;
    sum -= (s - sBefore) ** 2 / (2 * spreads.skill ** 2);
    sum -= (u - WEEK_CORRELATION * uBefore) ** 2 / (2 * spreads.week ** 2 * forgotten);
  }
  return sum;
}
