/*
 * What the place of a shot in its session does to it. Shot i counts from 0 at the session's first shot.
 *
 *     warm(i) = exp(−i / 15)         the cold start, gone after some 40 shots
 *     tired(i) = max(0, i − 100) / 100
 *     spent(i) = tired(i)², from shot 200 on straight: 2 tired(i) − 1
 *     g_j(i) = max(0, i − knot j) / 50
 *
 * The true shape is unknown. Spent lets tiredness gather or fade step by step, so that what the shots up to 150 show about
 * it is carried on to later ones; the g_j let the curve start at any slope and bend a little at every knot. Without them a
 * wrong shape costs two points of bias where pressured rounds come last (tests/bench/modelCoverage.ts).
 */

export const KNOTS = [0, 20, 50, 80, 120, 160] as const;
/** warm and tired come first, then what the free curve is made of: spent and one column for each knot. */
export const WARM_TIRED = 2;
export const ORDER_COLUMNS = WARM_TIRED + 1 + KNOTS.length;

const WARM_SHOTS = 15;
const TIRED_FROM = 100;
const SPENT_TO = 200;
const KNOT_UNIT = 50;

/**
 * The mean of every order column over the shots `from` .. `to` − 1, by closed sums; a round logged as a count says
 * no more about the order inside it.
 *
 * @param out takes the {@link ORDER_COLUMNS} means, from index `at` on
 * @throws RangeError unless 0 ≤ from < to, both whole
 */
export function meanOrder(from: number, to: number, out: Float64Array, at = 0): void {
  if (!(Number.isInteger(from) && Number.isInteger(to) && from >= 0 && from < to)) {
    throw new RangeError(`An order curve wants whole places 0 ≤ from < to, not ${from} and ${to}`);
  }
  const shots = to - from;
  // A geometric sum.
  out[at] =
    (Math.exp(-from / WARM_SHOTS) - Math.exp(-to / WARM_SHOTS)) / -Math.expm1(-1 / WARM_SHOTS) / shots;
  out[at + 1] = ramp(from, to, TIRED_FROM) / 100 / shots;
  out[at + 2] = (bowl(from, to, TIRED_FROM) - bowl(from, to, SPENT_TO)) / 100 ** 2 / shots;
  for (const [index, knot] of KNOTS.entries()) {
    out[at + WARM_TIRED + 1 + index] = ramp(from, to, knot) / KNOT_UNIT / shots;
  }
}

/** Σ max(0, i − start) over the shots `from` .. `to` − 1. */
function ramp(from: number, to: number, start: number): number {
  return triangle(to - start) - triangle(from - start);
}

/** Σ max(0, i − start)² over the shots `from` .. `to` − 1. */
function bowl(from: number, to: number, start: number): number {
  return pyramid(to - start) - pyramid(from - start);
}

/** 0 + 1 + 4 + … + (m − 1)²; 0 for m ≤ 1. */
function pyramid(m: number): number {
  return m > 0 ? ((m - 1) * m * (2 * m - 1)) / 6 : 0;
}

/** 0 + 1 + … + (m − 1); 0 for m ≤ 1. */
function triangle(m: number): number {
  return m > 0 ? (m * (m - 1)) / 2 : 0;
}
