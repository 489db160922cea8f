/** Points and weights: Σ weight·f(node) stands for the mean of f over a standard normal variable. */
export interface Quadrature {
  /** Ascending. */
  readonly nodes: readonly number[];
  /** Sum to 1. */
  readonly weights: readonly number[];
}

const known = new Map<number, Quadrature>();

/**
 * Gauss-Hermite quadrature for the standard normal distribution, exact for polynomials up to degree 2n − 1. The
 * nodes are the roots of the Hermite polynomial He_n, found between those of He_{n−1}; with the polynomials h_k
 * scaled to unit norm the weights are 1 / (n h_{n−1}(node)²).
 *
 * @param n number of nodes, a whole number from 1 to 64
 * @throws RangeError for any other n
 */
export function gaussHermite(n: number): Quadrature {
  if (!(Number.isInteger(n) && n >= 1 && n <= 64)) {
    throw new RangeError(`Quadrature wants 1 to 64 nodes, not ${n}`);
  }
  const ready = known.get(n);
  if (ready) return ready;
  let roots: number[] = [];
  for (let degree = 1; degree <= n; degree += 1) {
    // All roots lie within ±√(4·degree + 2).
    const edge = Math.sqrt(4 * degree + 2);
    const fences = [-edge, ...roots, edge];
    roots = fences.slice(1).map((high, at) => rootBetween(degree, fences[at] ?? -edge, high));
  }
  const raw = roots.map((root) => 1 / (n * hermite(n, root).before ** 2));
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  const made = { nodes: roots, weights: raw.map((weight) => weight / total) };
  known.set(n, made);
  return made;
}

/** h_n(x) and h_{n−1}(x), of unit norm: √k·h_k = x·h_{k−1} − √(k − 1)·h_{k−2}. */
function hermite(n: number, x: number): { value: number; before: number } {
  let before = 0;
  let value = 1;
  for (let k = 1; k <= n; k += 1) {
    [before, value] = [value, (x * value - Math.sqrt(k - 1) * before) / Math.sqrt(k)];
  }
  return { value, before };
}

/** The only root of h_n between two fences: Newton (h_n′ = √n·h_{n−1}), halving wherever a step leaves the fences. */
function rootBetween(n: number, low: number, high: number): number {
  const risesAtHigh = hermite(n, high).value > 0;
  let x = (low + high) / 2;
  for (let round = 0; round < 200; round += 1) {
    const { value, before } = hermite(n, x);
    if (value > 0 === risesAtHigh) high = x;
    else low = x;
    let next = x - value / (Math.sqrt(n) * before);
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - x) <= 1e-16 * Math.max(1, Math.abs(x))) return next;
    x = next;
  }
  return x;
}
