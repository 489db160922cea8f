import { type Matrix } from '../matrix.ts';
import { DAY_NUMBERS, type DayRoom } from './dayPass.ts';
import type { Design } from './design.ts';
import { weekShifts } from './state.ts';
import { WEEK_FACTORS, type WeekFactors } from './weekPass.ts';

/*
 * The way back through the elimination. With L Lᵀ the block of a week and z either its reduced gradient L⁻¹g (for a
 * Newton step) or standard normal numbers (for a draw),
 *
 *     step_w = L⁻ᵀ ( z − L⁻¹C · shared − L⁻¹O · step_{w+1} )
 *
 * and the same for days, so that a draw made this way has exactly the covariance H⁻¹.
 */

/** L y = right, then Lᵀ x = y. */
export function solveShared(
  lower: Matrix,
  right: Float64Array,
): { solution: Float64Array; half: Float64Array } {
  const { size, values } = lower;
  const half = Float64Array.from(right);
  for (let row = 0; row < size; row += 1) {
    let rest = half[row] as number;
    for (let k = 0; k < row; k += 1) rest -= (values[row * size + k] as number) * (half[k] as number);
    half[row] = rest / (values[row * size + row] as number);
  }
  return { solution: solveUpper(lower, half), half };
}

/** The x with Lᵀ x = half. */
export function solveUpper({ size, values }: Matrix, half: Float64Array): Float64Array {
  const x = Float64Array.from(half);
  for (let row = size - 1; row >= 0; row -= 1) {
    const here = (x[row] as number) / (values[row * size + row] as number);
    x[row] = here;
    for (let k = 0; k < row; k += 1) x[k] = (x[k] as number) - (values[row * size + k] as number) * here;
  }
  return x;
}

/** @param normals two for each week, or null to take the reduced gradient */
export function backToWeeks(
  { blocks, cross }: WeekFactors,
  shared: Float64Array,
  normals: Float64Array | null,
): Float64Array {
  const weeks = blocks.length / WEEK_FACTORS;
  const size = shared.length;
  const step = new Float64Array(2 * weeks);
  for (let week = weeks - 1; week >= 0; week -= 1) {
    const from = WEEK_FACTORS * week;
    let y1 = normals ? (normals[2 * week] as number) : (blocks[from + 6] as number);
    let y2 = normals ? (normals[2 * week + 1] as number) : (blocks[from + 7] as number);
    const first = 2 * size * week;
    const second = first + size;
    for (let i = 0; i < size; i += 1) {
      y1 -= (cross[first + i] as number) * (shared[i] as number);
      y2 -= (cross[second + i] as number) * (shared[i] as number);
    }
    if (week + 1 < weeks) {
      const s = step[2 * week + 2] as number;
      const u = step[2 * week + 3] as number;
      y1 -= (blocks[from + 3] as number) * s;
      y2 -= (blocks[from + 4] as number) * s + (blocks[from + 5] as number) * u;
    }
    const u = y2 / (blocks[from + 2] as number);
    step[2 * week] = (y1 - (blocks[from + 1] as number) * u) / (blocks[from] as number);
    step[2 * week + 1] = u;
  }
  return step;
}

/** @param normals two for each session, or null to take the reduced gradient */
export function backToDays(
  design: Design,
  { dayBlocks, dayCross }: DayRoom,
  shared: Float64Array,
  weekStep: Float64Array,
  normals: Float64Array | null,
): Float64Array {
  const { base, sessions } = design;
  const shifts = weekShifts(design, shared, weekStep);
  const step = new Float64Array(2 * sessions.count);
  for (let day = 0; day < sessions.count; day += 1) {
    const from = DAY_NUMBERS * day;
    const week = sessions.week[day] as number;
    const level = shifts[2 * week] as number;
    const press = shifts[2 * week + 1] as number;
    let y1 = normals ? (normals[2 * day] as number) : (dayBlocks[from + 7] as number);
    let y2 = normals ? (normals[2 * day + 1] as number) : (dayBlocks[from + 8] as number);
    y1 -= (dayBlocks[from + 3] as number) * level + (dayBlocks[from + 4] as number) * press;
    y2 -= (dayBlocks[from + 5] as number) * level + (dayBlocks[from + 6] as number) * press;
    const first = 2 * base * day;
    const second = first + base;
    for (let i = 0; i < base; i += 1) {
      y1 -= (dayCross[first + i] as number) * (shared[i] as number);
      y2 -= (dayCross[second + i] as number) * (shared[i] as number);
    }
    const c = y2 / (dayBlocks[from + 2] as number);
    step[2 * day] = (y1 - (dayBlocks[from + 1] as number) * c) / (dayBlocks[from] as number);
    step[2 * day + 1] = c;
  }
  return step;
}
