import type { DropEstimate } from '../stats/drop.ts';
import type { Rated } from '../stats/summary.ts';

/* Numbers as these screens write them. */

/** `46 %` */
export function percent({ makes, attempts }: { readonly makes: number; readonly attempts: number }): string {
  return attempts === 0 ? '–' : `${Math.round((100 * makes) / attempts)} %`;
}

/** `38 to 54 %` */
export function rateSpan({ rate }: Rated): string {
  return rate ? `${Math.round(100 * rate.low)} to ${Math.round(100 * rate.high)} %` : '–';
}

/** `46 of 100` */
export function countWords({ makes, attempts }: Rated): string {
  return attempts === 0 ? 'no shots' : `${makes} of ${attempts}`;
}

/** `1 point`, `6 points`, `−2 points` */
export function pointsWords(points: number): string {
  const whole = Math.round(points);
  return Math.abs(whole) === 1 ? `${signed(whole)} point` : `${signed(whole)} points`;
}

/** `−2 to 10` */
export function dropSpan({ low, high }: DropEstimate): string {
  return `${signed(low)} to ${signed(high)}`;
}

/** A whole number with a real minus sign; never −0. */
export function signed(value: number): string {
  const whole = Math.round(value);
  return whole < 0 ? `−${-whole}` : String(Math.abs(whole));
}
