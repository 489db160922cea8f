/** One slope of the pressure trend: its value in each week, in units of 10 weeks. */
export type TrendColumn = Float64Array;

const UNIT_WEEKS = 10;

/**
 * A piecewise-linear trend, one slope for each stretch of weeks: column j rises by 1 for every 10 weeks inside its
 * own stretch and is flat elsewhere. Centred over all weeks, so that the person's answer to pressure stays an average.
 *
 * @param weeks weeks in all; one week has no trend
 * @param stretch weeks for each slope
 */
export function trendColumns(weeks: number, stretch: number): TrendColumn[] {
  if (weeks < 2) return [];
  return Array.from({ length: Math.ceil(weeks / stretch) }, (_, slope) => {
    const values = Float64Array.from(
      { length: weeks },
      (__, week) => Math.min(Math.max(week - slope * stretch, 0), stretch) / UNIT_WEEKS,
    );
    const mean = values.reduce((sum, value) => sum + value, 0) / weeks;
    return values.map((value) => value - mean);
  }).filter((values) => values.some((value) => value !== 0));
}
