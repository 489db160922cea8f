import type { Probability } from '../basics/units.ts';
import type { DropEstimate } from '../stats/drop.ts';
import type { Rated } from '../stats/summary.ts';

/* Numbers as these screens write them. */

/** `46 %` */
export function percent({ makes, attempts }: Pick<Rated, 'makes' | 'attempts'>): string {
  return attempts === 0 ? '–' : `${Math.round((100 * makes) / attempts)} %`;
}

/**
 * The two ends of a span as they are written: whole, but with one decimal where both would be the same number, since
 * “between 8 and 8” says nothing. A real minus sign.
 */
export function endWords(low: number, high: number): readonly [low: string, high: string] {
  const [from, to] = [signed(low), signed(high)];
  return from === to ? [onePlace(low), onePlace(high)] : [from, to];
}

function onePlace(value: number): string {
  const words = Math.abs(value).toFixed(1);
  return value < 0 && words !== '0.0' ? `−${words}` : words;
}

/** `38 to 54 %` */
export function rateSpan({ rate }: Rated): string {
  return rate ? percentSpan({ low: 100 * rate.low, high: 100 * rate.high }) : '–';
}

/** `38 to 54 %`, from percentages. */
export function percentSpan({ low, high }: { readonly low: number; readonly high: number }): string {
  return `${endWords(low, high).join(' to ')} %`;
}

/** Shares of a whole as percentages that add up to 100: rounded down, and the greatest remainders up. */
export function wholePercents(shares: readonly number[]): number[] {
  const total = shares.reduce((sum, share) => sum + share, 0);
  const exact = shares.map((share) => (total > 0 ? (100 * share) / total : 0));
  const whole = exact.map(Math.floor);
  const missing = total > 0 ? 100 - whole.reduce((sum, one) => sum + one, 0) : 0;
  const order = exact
    .map((share, at) => ({ at, rest: share - Math.floor(share) }))
    .toSorted((a, b) => b.rest - a.rest);
  for (const { at } of order.slice(0, missing)) whole[at] = (whole[at] ?? 0) + 1;
  return whole;
}

/** `46 of 100` */
export function countWords({ makes, attempts }: Pick<Rated, 'makes' | 'attempts'>): string {
  return attempts === 0 ? 'no shots' : `${makes} of ${attempts}`;
}

/** `1 point`, `6 points`, `−2 points` */
export function pointsWords(points: number): string {
  return withPoints(signed(points));
}

/** A number as it is written, with its unit: `1 point`, `7.6 points`. */
export function withPoints(written: string): string {
  return written === '1' || written === '−1' ? `${written} point` : `${written} points`;
}

/** `−2 to 10` */
export function dropSpan({ low, high }: DropEstimate): string {
  return endWords(low, high).join(' to ');
}

/** `93 in 100`; never a chance of 0 or 1, which no record can give. */
export function chanceWords(chance: Probability): string {
  if (chance > 0.995) return 'over 99 in 100';
  if (chance < 0.005) return 'under 1 in 100';
  return `${Math.round(100 * chance)} in 100`;
}

/** `3 cases in 100`, `2 cases in 1000`, `fewer than 1 case in 1000`. */
export function casesWords(chance: Probability): string {
  if (chance < 0.0005) return 'fewer than 1 case in 1000';
  const of = chance < 0.0145 && Math.round(1000 * chance) !== 10 ? 1000 : 100;
  return countedCases(Math.round(of * chance), of);
}

function countedCases(cases: number, of: number): string {
  return `${cases} ${cases === 1 ? 'case' : 'cases'} in ${of}`;
}

/** A share in percent that is never rounded up to all of it: `over 99 %`. */
export function partPercent(share: Probability): string {
  return share > 0.995 ? 'over 99 %' : `${Math.round(100 * share)} %`;
}

/** Evidence as odds: `12 to 1`. */
export function oddsWords(e: number): string {
  if (e > 1000) return 'more than 1000 to 1';
  return `${e < 9.95 ? e.toFixed(1) : Math.round(e)} to 1`;
}

/** `−0.58`; never −0.00. */
export function twoPlaces(value: number): string {
  const words = Math.abs(value).toFixed(2);
  return value < 0 && words !== '0.00' ? `−${words}` : words;
}

/** A whole number with a real minus sign; never −0. */
export function signed(value: number): string {
  const whole = Math.round(value);
  return whole < 0 ? `−${-whole}` : String(Math.abs(whole));
}
