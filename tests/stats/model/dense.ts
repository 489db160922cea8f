import { at, type Matrix, zeros } from '../../../renderer/stats/matrix.ts';
import type { Design } from '../../../renderer/stats/model/design.ts';
import { type Spreads, WEEK_CORRELATION } from '../../../renderer/stats/model/priors.ts';
import type { State } from '../../../renderer/stats/model/state.ts';

/* The model written out in full: every unknown in one long vector (shared, weeks, days), every matrix dense. */

export function unknowns({ columns, weeks, sessions }: Design): number {
  return columns.length + 2 * weeks + 2 * sessions.count;
}

export function flat({ shared, weeks, days }: State): Float64Array {
  return Float64Array.from([...shared, ...weeks, ...days]);
}

export function unflat({ columns, weeks }: Design, values: Float64Array): State {
  const end = columns.length + 2 * weeks;
  return {
    shared: values.slice(0, columns.length),
    weeks: values.slice(columns.length, end),
    days: values.slice(end),
  };
}

/** The full row of every cell. */
export function denseRows(design: Design): Float64Array[] {
  const { base, weekly, rows, pressured, sessions, columns, weeks } = design;
  const made: Float64Array[] = [];
  for (let session = 0; session < sessions.count; session += 1) {
    const week = at(sessions.week, session);
    for (let cell = at(sessions.start, session); cell < at(sessions.start, session + 1); cell += 1) {
      const row = new Float64Array(unknowns(design));
      const x = at(pressured, cell);
      for (let k = at(rows.start, cell); k < at(rows.start, cell + 1); k += 1) {
        row[at(rows.column, k)] = at(rows.value, k);
      }
      for (const [index, { side, values }] of weekly.entries()) {
        row[base + index] = at(values, week) * (side === 'all' ? 1 : x);
      }
      row[columns.length + 2 * week] = 1;
      row[columns.length + 2 * week + 1] = x;
      row[columns.length + 2 * weeks + 2 * session] = 1;
      row[columns.length + 2 * weeks + 2 * session + 1] = x;
      made.push(row);
    }
  }
  return made;
}

/** Prior precision of all unknowns. */
export function densePrior(design: Design, spreads: Spreads): Matrix {
  const { columns, weeks, sessions } = design;
  const matrix = zeros(unknowns(design));
  const add = (i: number, j: number, amount: number): void => {
    matrix.values[i * matrix.size + j] = at(matrix.values, i * matrix.size + j) + amount;
  };
  for (const [i, { prior }] of columns.entries()) add(i, i, prior.sd ** -2);
  // Each step of a chain is a normal variable: precision times the square of its difference.
  const chain = (offset: number, keep: number, first: number, step: number): void => {
    for (let week = 0; week < weeks; week += 1) {
      const i = columns.length + 2 * week + offset;
      const precision = (week === 0 ? first : step) ** -2;
      add(i, i, precision);
      if (week === 0) continue;
      add(i - 2, i - 2, precision * keep * keep);
      add(i, i - 2, -precision * keep);
      add(i - 2, i, -precision * keep);
    }
  };
  chain(0, 1, spreads.skill, spreads.skill);
  chain(1, WEEK_CORRELATION, spreads.week, spreads.week * Math.sqrt(1 - WEEK_CORRELATION ** 2));
  for (let session = 0; session < sessions.count; session += 1) {
    const i = columns.length + 2 * weeks + 2 * session;
    add(i, i, spreads.day ** -2);
    add(i + 1, i + 1, spreads.dayPressure ** -2);
  }
  return matrix;
}

/** −Hessian of the log joint density at a state. */
export function denseHessian(design: Design, spreads: Spreads, state: State): Matrix {
  const matrix = densePrior(design, spreads);
  const values = flat(state);
  for (const [cell, row] of denseRows(design).entries()) {
    const touched = [...row.keys()].filter((i) => at(row, i) !== 0);
    const eta = touched.reduce((sum, i) => sum + at(row, i) * at(values, i), 0);
    const p = 1 / (1 + Math.exp(-eta));
    const weight = at(design.attempts, cell) * p * (1 - p);
    for (const i of touched) {
      for (const j of touched) {
        const spot = i * matrix.size + j;
        matrix.values[spot] = at(matrix.values, spot) + weight * at(row, i) * at(row, j);
      }
    }
  }
  return matrix;
}
