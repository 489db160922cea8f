/*
 * Special functions in double precision. Formulas are named after Abramowitz & Stegun, Handbook of Mathematical
 * Functions (1964), "A&S". Accuracy is checked in tests/stats/special.test.ts against values worked to 30 digits.
 */

const HALF_LOG_2PI = Math.log(2 * Math.PI) / 2;
/** From here up Stirling's series is exact to the last digit. */
const STIRLING_FROM = 10;

/** ln Γ(x) minus Stirling's (x − ½) ln x − x + ½ ln 2π, for x ≥ 10 (A&S 6.1.41). */
function stirlingRest(x: number): number {
  const r = 1 / (x * x);
  const series =
    1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r * (1 / 1188 - r * (691 / 360360 - r / 156)))));
  return series / x;
}

/**
 * ln Γ(x), by Stirling's series after shifting x up to 10 or more. Absolute error below 1e-14 for x < 10.
 *
 * @throws RangeError unless x is a finite number above 0
 */
export function logGamma(x: number): number {
  if (!(x > 0 && Number.isFinite(x))) {
    throw new RangeError(`logGamma wants a finite number above 0, not ${x}`);
  }
  let shifted = x;
  let product = 1;
  while (shifted < STIRLING_FROM) {
    product *= shifted;
    shifted += 1;
  }
  return (
    (shifted - 0.5) * Math.log(shifted) - shifted + HALF_LOG_2PI + stirlingRest(shifted) - Math.log(product)
  );
}

/**
 * ln B(a, b) = ln Γ(a) + ln Γ(b) − ln Γ(a + b), arranged so that large a and b do not cancel.
 *
 * @throws RangeError unless a and b are finite numbers above 0
 */
export function logBeta(a: number, b: number): number {
  wantShape(a, b);
  const small = Math.min(a, b);
  const large = Math.max(a, b);
  if (large < STIRLING_FROM) return logGamma(a) + logGamma(b) - logGamma(a + b);
  const shared = stirlingRest(large) - stirlingRest(a + b);
  if (small < STIRLING_FROM) {
    const ratio = -(large - 0.5) * Math.log1p(small / large) - small * Math.log(a + b) + small;
    return logGamma(small) + ratio + shared;
  }
  return (
    HALF_LOG_2PI -
    Math.log(large) / 2 +
    (small - 0.5) * Math.log(small / (a + b)) -
    large * Math.log1p(small / large) +
    stirlingRest(small) +
    shared
  );
}

/** ln of the number of ways to choose k of n. @throws RangeError unless 0 ≤ k ≤ n */
export function logChoose(n: number, k: number): number {
  if (!(k >= 0 && k <= n)) throw new RangeError(`logChoose wants 0 ≤ k ≤ n, not k = ${k}, n = ${n}`);
  return -Math.log(n + 1) - logBeta(n - k + 1, k + 1);
}

/**
 * The regularised incomplete beta function I_x(a, b): the chance that a Beta(a, b) variable is at most x. By the
 * continued fraction A&S 26.5.8 (modified Lentz), on the side of the mean where it converges fast.
 *
 * @throws RangeError unless a and b are finite numbers above 0 and 0 ≤ x ≤ 1
 */
export function incompleteBeta(a: number, b: number, x: number): number {
  wantShape(a, b);
  wantFraction('incompleteBeta', x);
  if (x === 0 || x === 1) return x;
  if (x > (a + 1) / (a + b + 2)) return 1 - betaTail(b, a, 1 - x);
  return betaTail(a, b, x);
}

/**
 * The x with I_x(a, b) = p: a quantile of the Beta(a, b) distribution. Newton's method for ln I as a function of
 * logit x, which is concave, so that it comes down to the root from one side.
 *
 * @throws RangeError unless a and b are finite numbers above 0 and 0 ≤ p ≤ 1
 */
export function betaQuantile(a: number, b: number, p: number): number {
  wantShape(a, b);
  wantFraction('betaQuantile', p);
  if (p === 0 || p === 1) return p;
  if (p > 0.5) return 1 - betaQuantile(b, a, 1 - p);
  const wanted = Math.log(p);
  let u = Math.log(a / b);
  let last = u;
  for (let round = 0; round < 200; round += 1) {
    const x = expit(u);
    const below = incompleteBeta(a, b, x);
    if (below === 0) {
      // A step from above went so far down that nothing is left: half way back.
      u = (u + last) / 2;
      continue;
    }
    const step = ((Math.log(below) - wanted) * below) / betaPower(a, b, x);
    last = u;
    u -= step;
    if (Math.abs(step) <= 1e-15 * Math.max(1, Math.abs(u))) break;
  }
  return expit(u);
}

/**
 * The regularised incomplete gamma function P(a, x): the chance that a gamma variable of shape a and scale 1 is at most
 * x. Power series A&S 6.5.29 below a + 1, continued fraction A&S 6.5.31 (modified Lentz) above it.
 *
 * @throws RangeError unless a is a finite number above 0 and x ≥ 0
 */
export function incompleteGamma(a: number, x: number): number {
  if (!(a > 0 && Number.isFinite(a) && x >= 0)) {
    throw new RangeError(`incompleteGamma wants a finite shape above 0 and x from 0 up, not ${a} and ${x}`);
  }
  if (x === 0) return 0;
  if (x === Infinity) return 1;
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = a + 1; term > sum * 1e-17; n += 1) {
      term *= x / n;
      sum += term;
    }
    return Math.min(1, gammaPower(a, x) * sum);
  }
  let b = x + 1 - a;
  let c = Infinity;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n <= 100_000; n += 1) {
    const over = n * (a - n);
    b += 2;
    d = 1 / apart(b + over * d);
    c = apart(b + over / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return 1 - gammaPower(a, x) * fraction;
}

/** Density of the standard normal distribution. */
export function normalDensity(x: number): number {
  return Math.exp(-(x * x) / 2 - HALF_LOG_2PI);
}

/**
 * Φ(x), the chance that a standard normal variable is at most x. Power series A&S 26.2.11 near 0, continued
 * fraction A&S 26.2.14 in the tails, so that small tails keep their digits.
 *
 * @throws RangeError where x is not a number
 */
export function normalCdf(x: number): number {
  if (Number.isNaN(x)) throw new RangeError('normalCdf wants a number');
  if (Math.abs(x) < 2) {
    let term = x;
    let sum = x;
    for (let odd = 3; Math.abs(term) > 1e-17; odd += 2) {
      term *= (x * x) / odd;
      sum += term;
    }
    return 0.5 + sum * normalDensity(x);
  }
  const far = Math.abs(x);
  let fraction = far;
  for (let k = 120; k >= 1; k -= 1) fraction = far + k / fraction;
  const tail = normalDensity(far) / fraction;
  return x < 0 ? tail : 1 - tail;
}

/**
 * The x with Φ(x) = p. Starts from A&S 26.2.23 (good to 4.5e-4) and takes three Halley steps.
 *
 * @throws RangeError unless 0 < p < 1
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`normalQuantile wants a chance between 0 and 1, not ${p}`);
  if (p > 0.5) return -normalQuantile(1 - p);
  const t = Math.sqrt(-2 * Math.log(p));
  let x =
    (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t;
  for (let round = 0; round < 3; round += 1) {
    const step = (normalCdf(x) - p) / normalDensity(x);
    x -= step / (1 + (x * step) / 2);
  }
  return x;
}

/** 1 / (1 + e^−x): log-odds to a probability. */
export function expit(x: number): number {
  return 1 / (1 + Math.exp(-x));
}

/** ln(p / (1 − p)): a probability to log-odds. @throws RangeError unless 0 < p < 1 */
export function logit(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`logit wants a chance between 0 and 1, not ${p}`);
  return Math.log(p) - Math.log1p(-p);
}

/** x^a (1 − x)^b / B(a, b). For large a and b as a distance from the mean, which keeps the digits. */
function betaPower(a: number, b: number, x: number): number {
  if (a < STIRLING_FROM || b < STIRLING_FROM) {
    return Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta(a, b));
  }
  const sum = a + b;
  const fromMean = x * b - (1 - x) * a;
  const exponent = a * logNear(fromMean / a, (x * sum) / a) + b * logNear(-fromMean / b, ((1 - x) * sum) / b);
  const rest = stirlingRest(sum) - stirlingRest(a) - stirlingRest(b);
  return Math.exp(exponent + rest) * Math.sqrt((a * b) / (2 * Math.PI * sum));
}

/** x^a e^−x / Γ(a). For large a as a distance from the mean, which keeps the digits. */
function gammaPower(a: number, x: number): number {
  if (a < STIRLING_FROM) return Math.exp(a * Math.log(x) - x - logGamma(a));
  const t = (x - a) / a;
  return Math.exp(a * (logNear(t, x / a) - t) - stirlingRest(a)) * Math.sqrt(a / (2 * Math.PI));
}

/** ln(1 + t), where `whole` is 1 + t worked the other way. */
function logNear(t: number, whole: number): number {
  return Math.abs(t) < 0.5 ? Math.log1p(t) : Math.log(whole);
}

/** Away from 0, so that a continued fraction can go on. */
function apart(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}

/** I_x(a, b) for x below the mean. */
function betaTail(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / apart(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m <= 100_000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / apart(1 + even * d);
    c = apart(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / apart(1 + odd * d);
    c = apart(1 + odd / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return (betaPower(a, b, x) * fraction) / a;
}

function wantShape(a: number, b: number): void {
  if (!(a > 0 && b > 0 && Number.isFinite(a + b))) {
    throw new RangeError(`A beta distribution wants two finite numbers above 0, not ${a} and ${b}`);
  }
}

function wantFraction(who: string, x: number): void {
  if (!(x >= 0 && x <= 1)) throw new RangeError(`${who} wants a fraction from 0 to 1, not ${x}`);
}
