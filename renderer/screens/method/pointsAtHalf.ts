/** What a step in log-odds is worth in points for a shooter at 50 %: the slope of the logistic curve there is 1/4. */
export function pointsAtHalf(step: number): string {
  const points = 25 * step;
  return points < 4.95 ? String(Number(points.toFixed(1))) : String(Math.round(points));
}
