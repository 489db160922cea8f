import type { Axis } from '../../charts/IntervalChart.tsx';
import { reachOf } from '../../charts/scale.ts';
import { signed } from '../numberWords.ts';

/**
 * An axis of points with 0 in the middle that holds all spans.
 *
 * @param sides what lies left and right of 0
 */
export function aroundNone(
  spans: readonly { readonly low: number; readonly high: number }[],
  sides: readonly [string, string],
): Axis {
  const reach = reachOf(spans.flatMap(({ low, high }) => [low, high]));
  return { from: -reach, to: reach, step: reach / 2, write: signed, sides };
}
