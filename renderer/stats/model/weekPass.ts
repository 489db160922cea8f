import { type DayRoom, WEEK_NUMBERS } from './dayPass.ts';
import type { Design } from './design.ts';
import { WEEK_CORRELATION, type Spreads } from './priors.ts';
import type { State } from './state.ts';

/*
 * Second stage: the weeks, a chain of 2 × 2 blocks, are eliminated from first to last, which leaves the shared unknowns
 * alone. s walks: s_w − s_{w−1} ~ N(0, τs²), s_0 ~ N(0, τs²). u forgets: u_w ~ N(ρ u_{w−1}, τu²(1 − ρ²)),
 * u_0 ~ N(0, τu²). Both only tie neighbours: off-diagonal O = diag(−1/τs², −ρ/(τu²(1 − ρ²))). With P_w = L Lᵀ the
 * block of week w after the weeks before it,
 *
 *     P_{w+1} −= O P_w⁻¹ O,   C_{w+1} −= O P_w⁻¹ C_w,   shared −= C_wᵀ P_w⁻¹ C_w.
 */

/** Numbers kept for each week: L (3), R = L⁻¹O (3: r11, r21, r22), q = L⁻¹g (2). */
export const WEEK_FACTORS = 8;

/** What is left of the weeks: enough to go back from the shared unknowns to them. */
export interface WeekFactors {
  readonly blocks: Float64Array;
  /** L⁻¹ C of every week: two rows, one number for each shared unknown. */
  readonly cross: Float64Array;
}

export interface WeekSums {
  readonly factors: WeekFactors;
  /** −Hessian of all shared unknowns, lower triangle, days and weeks eliminated. */
  readonly hessian: Float64Array;
  readonly gradient: Float64Array;
  /** Log prior of weeks and shared unknowns without constants. */
  readonly objective: number;
  /** Σ ln |P_w|. */
  readonly logDeterminant: number;
  /** ln |Q| of the prior precision of weeks and shared unknowns. */
  readonly priorLogDeterminant: number;
  readonly decrement: number;
}

export function weekPass(design: Design, spreads: Spreads, state: State, room: DayRoom): WeekSums {
  const { weeks, columns } = design;
  const size = columns.length;
  const { hessian, gradient, cross } = withWeekly(design, room);
  const shared = sharedPrior(design, state, hessian, gradient);
  const ofS = 1 / spreads.skill ** 2;
  const ofU = 1 / (spreads.week ** 2 * (1 - WEEK_CORRELATION ** 2));
  const blocks = new Float64Array(WEEK_FACTORS * weeks);
  let { objective } = shared;
  let logDeterminant = 0;
  let decrement = 0;
  let [r11, r21, r22, q1, q2] = [0, 0, 0, 0, 0];
  for (let week = 0; week < weeks; week += 1) {
    const from = WEEK_NUMBERS * week;
    const prior = weekPrior(state.weeks, week, weeks, ofS, ofU);
    objective += prior.objective;
    const pss = (room.weekBlocks[from] as number) + prior.ss - r11 * r11 - r21 * r21;
    const psu = (room.weekBlocks[from + 1] as number) - r21 * r22;
    const puu = (room.weekBlocks[from + 2] as number) + prior.uu - r22 * r22;
    const gs = (room.weekBlocks[from + 3] as number) + prior.gs - r11 * q1 - r21 * q2;
    const gu = (room.weekBlocks[from + 4] as number) + prior.gu - r22 * q2;
    const before = 2 * size * (week - 1);
    const l11 = Math.sqrt(pss);
    const l21 = psu / l11;
    const l22 = Math.sqrt(puu - l21 * l21);
    logDeterminant += 2 * Math.log(l11 * l22);
    const first = 2 * size * week;
    const second = first + size;
    const n1 = gs / l11;
    const n2 = (gu - l21 * n1) / l22;
    for (let i = 0; i < size; i += 1) {
      let cs = cross[first + i] as number;
      let cu = cross[second + i] as number;
      if (week > 0) {
        const above = cross[before + i] as number;
        const below = cross[before + size + i] as number;
        cs -= r11 * above + r21 * below;
        cu -= r22 * below;
      }
      const t1 = cs / l11;
      const t2 = (cu - l21 * t1) / l22;
      cross[first + i] = t1;
      cross[second + i] = t2;
      gradient[i] = (gradient[i] as number) - t1 * n1 - t2 * n2;
      const line = i * size;
      for (let j = 0; j <= i; j += 1) {
        const taken = t1 * (cross[first + j] as number) + t2 * (cross[second + j] as number);
        hessian[line + j] = (hessian[line + j] as number) - taken;
      }
    }
    q1 = n1;
    q2 = n2;
    decrement += q1 * q1 + q2 * q2;
    r11 = -ofS / l11;
    r21 = (l21 * ofS) / (l11 * l22);
    r22 = (-WEEK_CORRELATION * ofU) / l22;
    blocks.set([l11, l21, l22, r11, r21, r22, q1, q2], WEEK_FACTORS * week);
  }
  const priorLogDeterminant =
    shared.logDeterminant + weeks * Math.log(ofS) + (weeks - 1) * Math.log(ofU) - 2 * Math.log(spreads.week);
  return {
    factors: { blocks, cross },
    hessian,
    gradient,
    objective,
    logDeterminant,
    priorLogDeterminant: weeks === 0 ? shared.logDeterminant : priorLogDeterminant,
    decrement,
  };
}

/** Adds the weekly columns to the base columns: in week w such a column is its value there times s, or times u. */
function withWeekly(
  design: Design,
  room: DayRoom,
): Pick<WeekSums, 'hessian' | 'gradient'> & { cross: Float64Array } {
  const { base, weekly, weeks, columns } = design;
  const size = columns.length;
  const hessian = new Float64Array(size * size);
  const gradient = new Float64Array(size);
  const cross = new Float64Array(2 * size * weeks);
  gradient.set(room.gradient);
  for (let row = 0; row < base; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      hessian[row * size + column] = room.hessian[row * base + column] as number;
    }
  }
  for (let week = 0; week < weeks; week += 1) {
    const from = WEEK_NUMBERS * week;
    const mss = room.weekBlocks[from] as number;
    const msu = room.weekBlocks[from + 1] as number;
    const muu = room.weekBlocks[from + 2] as number;
    const crossS = 2 * base * week;
    const crossU = crossS + base;
    const toS = 2 * size * week;
    const toU = toS + size;
    for (let i = 0; i < base; i += 1) {
      cross[toS + i] = room.weekCross[crossS + i] as number;
      cross[toU + i] = room.weekCross[crossU + i] as number;
    }
    for (const [index, { side, values }] of weekly.entries()) {
      const here = values[week] as number;
      const row = base + index;
      const all = side === 'all';
      const source = all ? toS : toU;
      cross[toS + row] = here * (all ? mss : msu);
      cross[toU + row] = here * (all ? msu : muu);
      gradient[row] = (gradient[row] as number) + here * (room.weekBlocks[from + (all ? 3 : 4)] as number);
      for (let column = 0; column <= row; column += 1) {
        const spot = row * size + column;
        hessian[spot] = (hessian[spot] as number) + here * (cross[source + column] as number);
      }
    }
  }
  return { hessian, gradient, cross };
}

/** Adds the priors of the shared unknowns. */
function sharedPrior(
  { columns }: Design,
  { shared }: State,
  hessian: Float64Array,
  gradient: Float64Array,
): { objective: number; logDeterminant: number } {
  let objective = 0;
  let logDeterminant = 0;
  for (const [i, { prior }] of columns.entries()) {
    const precision = 1 / prior.sd ** 2;
    const away = (shared[i] as number) - prior.mean;
    const diagonal = i * columns.length + i;
    hessian[diagonal] = (hessian[diagonal] as number) + precision;
    gradient[i] = (gradient[i] as number) - precision * away;
    objective -= (precision * away * away) / 2;
    logDeterminant += Math.log(precision);
  }
  return { objective, logDeterminant };
}

interface WeekPrior {
  readonly ss: number;
  readonly uu: number;
  readonly gs: number;
  readonly gu: number;
  readonly objective: number;
}

/** A week's part of the chains' precision and gradient; ofS and ofU are the precisions of one step. */
function weekPrior(values: Float64Array, week: number, weeks: number, ofS: number, ofU: number): WeekPrior {
  const rho = WEEK_CORRELATION;
  const s = values[2 * week] as number;
  const u = values[2 * week + 1] as number;
  const sBefore = week === 0 ? 0 : (values[2 * week - 2] as number);
  const uBefore = week === 0 ? 0 : (values[2 * week - 1] as number);
  // The first u has the stationary spread: its precision is (1 − ρ²) of a step's.
  const entry = week === 0 ? ofU * (1 - rho * rho) : ofU;
  const stepS = s - sBefore;
  const stepU = u - rho * uBefore;
  let ss = ofS;
  let uu = entry;
  let gs = -ofS * stepS;
  let gu = -entry * stepU;
  if (week + 1 < weeks) {
    ss += ofS;
    uu += rho * rho * ofU;
    gs += ofS * ((values[2 * week + 2] as number) - s);
    gu += rho * ofU * ((values[2 * week + 3] as number) - rho * u);
  }
  return { ss, uu, gs, gu, objective: -(ofS * stepS * stepS + entry * stepU * stepU) / 2 };
}
