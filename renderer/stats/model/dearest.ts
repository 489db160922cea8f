import type { Probability } from '../../basics/units.ts';
import { at } from '../matrix.ts';

/**
 * For each of several rows of draws, the chance that it is the largest: the share of the draws in which it is. Rows that
 * are the largest together share the draw.
 *
 * @param rows of equal length
 */
export function sharesOfMost(rows: readonly Float64Array[]): Probability[] {
  const times = rows.map(() => 0);
  const draws = rows[0]?.length ?? 0;
  for (let draw = 0; draw < draws; draw += 1) {
    const values = rows.map((row) => at(row, draw));
    const most = Math.max(...values);
    const largest = values.filter((value) => value === most).length;
    for (const [row, value] of values.entries()) {
      if (value === most) times[row] = (times[row] ?? 0) + 1 / largest;
    }
  }
  return times.map((count) => count / draws);
}
