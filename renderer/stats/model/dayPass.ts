import type { Design } from './design.ts';
import type { Spreads } from './priors.ts';
import type { State } from './state.ts';

/*
 * First stage of a Newton step: every cell is visited once, and each session's own pair (b, c) is eliminated. With
 * M_d = Σ w [1 x; x x²] over its cells, w = attempts·p(1 − p), the session's block is D_d = M_d + diag(1/τd², 1/τc²)
 * = L Lᵀ, and B_d is its cross block with the base columns. What is handed on:
 *
 *     weeks   += M_d − M_d D_d⁻¹ M_d         cross += B_d − M_d D_d⁻¹ B_d         shared −= B_dᵀ D_d⁻¹ B_d
 */

/** Numbers kept for each session: L (3), L⁻¹M (4), L⁻¹g (2). */
export const DAY_NUMBERS = 9;

/** Room for one pass, filled anew by each. */
export interface DayRoom {
  /** −Hessian of the base columns, lower triangle, days eliminated, priors of the shared unknowns not in it. */
  readonly hessian: Float64Array;
  readonly gradient: Float64Array;
  /** For each week Mss, Msu, Muu, gs, gu, days eliminated. */
  readonly weekBlocks: Float64Array;
  /** For each week the cross blocks of s and of u with the base columns. */
  readonly weekCross: Float64Array;
  readonly dayBlocks: Float64Array;
  /** L⁻¹ B of every session: two rows of base columns. */
  readonly dayCross: Float64Array;
}

export const WEEK_NUMBERS = 5;

export function dayRoom({ base, weeks, sessions }: Design): DayRoom {
  return {
    hessian: new Float64Array(base * base),
    gradient: new Float64Array(base),
    weekBlocks: new Float64Array(WEEK_NUMBERS * weeks),
    weekCross: new Float64Array(2 * base * weeks),
    dayBlocks: new Float64Array(DAY_NUMBERS * sessions.count),
    dayCross: new Float64Array(2 * base * sessions.count),
  };
}

/** What a pass adds up to beside what it leaves in the room. */
export interface DaySums {
  /** Log-likelihood and the sessions' log prior without its constant. */
  readonly objective: number;
  /** Σ ln |D_d|. */
  readonly logDeterminant: number;
  /** Σ |L⁻¹ g|², the sessions' share of gᵀ H⁻¹ g. */
  readonly decrement: number;
}

/**
 * @param shifts what each week adds to all shots and to pressured ones, see weekShifts
 * @param rates a make rate for each cell that the gradient shall take instead of the state's own
 */
export function dayPass(
  design: Design,
  spreads: Spreads,
  state: State,
  shifts: Float64Array,
  room: DayRoom,
  rates: Float64Array | null = null,
): DaySums {
  const { base, rows, pressured, makes, attempts, sessions } = design;
  const { start, column, value } = rows;
  const { hessian, gradient, weekBlocks, weekCross, dayBlocks, dayCross } = room;
  const { shared, days } = state;
  const ofB = 1 / spreads.day ** 2;
  const ofC = 1 / spreads.dayPressure ** 2;
  for (const array of [hessian, gradient, weekBlocks, weekCross]) array.fill(0);
  const crossB = new Float64Array(base);
  const crossC = new Float64Array(base);
  let objective = 0;
  let logDeterminant = 0;
  let decrement = 0;
  for (let day = 0; day < sessions.count; day += 1) {
    const week = sessions.week[day] as number;
    const b = days[2 * day] as number;
    const c = days[2 * day + 1] as number;
    const level = (shifts[2 * week] as number) + b;
    const press = (shifts[2 * week + 1] as number) + c;
    crossB.fill(0);
    crossC.fill(0);
    let mB = 0;
    let mC = 0;
    let gB = 0;
    let gC = 0;
    const end = sessions.start[day + 1] as number;
    for (let cell = sessions.start[day] as number; cell < end; cell += 1) {
      const from = start[cell] as number;
      const to = start[cell + 1] as number;
      const x = pressured[cell] === 1;
      let eta = x ? level + press : level;
      for (let k = from; k < to; k += 1)
        eta += (value[k] as number) * (shared[column[k] as number] as number);
      const n = attempts[cell] as number;
      const y = makes[cell] as number;
      // ln(1 + e^η) and p without overflow on either side.
      const small = Math.exp(-Math.abs(eta));
      const p = eta >= 0 ? 1 / (1 + small) : small / (1 + small);
      objective += y * eta - n * (Math.max(eta, 0) + Math.log1p(small));
      const slope = y - n * (rates ? (rates[cell] as number) : p);
      const weight = (n * small) / ((1 + small) * (1 + small));
      mB += weight;
      gB += slope;
      if (x) {
        mC += weight;
        gC += slope;
      }
      for (let k = from; k < to; k += 1) {
        const row = column[k] as number;
        const entry = value[k] as number;
        const weighted = weight * entry;
        crossB[row] = (crossB[row] as number) + weighted;
        if (x) crossC[row] = (crossC[row] as number) + weighted;
        gradient[row] = (gradient[row] as number) + slope * entry;
        const line = row * base;
        for (let other = from; other <= k; other += 1) {
          const index = line + (column[other] as number);
          hessian[index] = (hessian[index] as number) + weighted * (value[other] as number);
        }
      }
    }
    objective -= (ofB * b * b + ofC * c * c) / 2;

    // D = L Lᵀ, then K = L⁻¹ M and q = L⁻¹ g.
    const l11 = Math.sqrt(mB + ofB);
    const l21 = mC / l11;
    const l22 = Math.sqrt(mC + ofC - l21 * l21);
    logDeterminant += 2 * Math.log(l11 * l22);
    const k11 = mB / l11;
    const k12 = mC / l11;
    const k21 = (mC - l21 * k11) / l22;
    const k22 = (mC - l21 * k12) / l22;
    const q1 = (gB - ofB * b) / l11;
    const q2 = (gC - ofC * c - l21 * q1) / l22;
    decrement += q1 * q1 + q2 * q2;
    dayBlocks.set([l11, l21, l22, k11, k12, k21, k22, q1, q2], DAY_NUMBERS * day);
    const w = WEEK_NUMBERS * week;
    weekBlocks[w] = (weekBlocks[w] as number) + mB - k11 * k11 - k21 * k21;
    weekBlocks[w + 1] = (weekBlocks[w + 1] as number) + mC - k11 * k12 - k21 * k22;
    weekBlocks[w + 2] = (weekBlocks[w + 2] as number) + mC - k12 * k12 - k22 * k22;
    weekBlocks[w + 3] = (weekBlocks[w + 3] as number) + gB - k11 * q1 - k21 * q2;
    weekBlocks[w + 4] = (weekBlocks[w + 4] as number) + gC - k12 * q1 - k22 * q2;
    const ofS = 2 * base * week;
    const ofU = ofS + base;
    const first = 2 * base * day;
    const second = first + base;
    for (let i = 0; i < base; i += 1) {
      const t1 = (crossB[i] as number) / l11;
      const t2 = ((crossC[i] as number) - l21 * t1) / l22;
      dayCross[first + i] = t1;
      dayCross[second + i] = t2;
      if (t1 === 0) continue;
      weekCross[ofS + i] = (weekCross[ofS + i] as number) + (crossB[i] as number) - k11 * t1 - k21 * t2;
      weekCross[ofU + i] = (weekCross[ofU + i] as number) + (crossC[i] as number) - k12 * t1 - k22 * t2;
      gradient[i] = (gradient[i] as number) - t1 * q1 - t2 * q2;
      const line = i * base;
      for (let j = 0; j <= i; j += 1) {
        const taken = t1 * (dayCross[first + j] as number) + t2 * (dayCross[second + j] as number);
        hessian[line + j] = (hessian[line + j] as number) - taken;
      }
    }
  }
  return { objective, logDeterminant, decrement };
}
