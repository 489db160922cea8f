/* How numbers are printed. None is ever −0. */

/** Percentages and points: two decimals. */
export function hundredths(value: number): number {
  return Math.round(100 * value) / 100 + 0;
}

/** Chances, shares and ratios: four decimals. */
export function tenThousandths(value: number): number {
  return Math.round(10_000 * value) / 10_000 + 0;
}

/** Whatever may be very small or very large: four significant digits. What is too large to print is cut. */
export function fourDigits(value: number): number {
  return Number(Math.min(value, Number.MAX_VALUE / 2).toPrecision(4));
}
