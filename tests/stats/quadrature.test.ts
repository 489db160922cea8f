import { describe, expect, it } from 'vitest';

import { gaussHermite } from '../../renderer/stats/quadrature.ts';

/*
 * Abramowitz & Stegun (1964), Table 25.10 (formula 25.4.46), from memory. Their weight is e^−x², so a node here is √2
 * times theirs and a weight is theirs / √π. Non-negative half.
 */
const TABLE = [
  [3, [0, 1.224744871391589], [1.181635900604, 0.2954089751509]],
  [5, [0, 0.958572464613819, 2.020182870456086], [0.9453087204829, 0.3936193231522, 0.01995324205905]],
  [
    10,
    [0.342901327223705, 1.036610829789514, 1.756683649299882, 2.53273167423279, 3.436159118837738],
    [0.6108626337353, 0.2401386110823, 0.03387439445548, 0.001343645746781, 7.640432855233e-6],
  ],
] as const;

describe('quadrature for the standard normal', () => {
  it.each(TABLE)('%d nodes as in the table', (n, nodes, weights) => {
    const got = gaussHermite(n);
    const half = got.nodes.length - nodes.length;
    for (const [at, node] of nodes.entries()) {
      expect(got.nodes[half + at]).toBeCloseTo(node * Math.SQRT2, 12);
      expect((got.weights[half + at] ?? NaN) / ((weights[at] ?? NaN) / Math.sqrt(Math.PI))).toBeCloseTo(
        1,
        11,
      );
    }
  });
  it.each([1, 2, 9, 15, 16, 40, 64])('%d nodes give every moment they should', (n) => {
    const { nodes, weights } = gaussHermite(n);
    expect(nodes).toHaveLength(n);
    // E Z^(2k) = (2k − 1)!!, exact up to degree 2n − 1.
    let moment = 1;
    for (let power = 0; power < Math.min(2 * n, 20); power += 2) {
      const sum = weights.reduce((total, weight, i) => total + weight * (nodes[i] ?? NaN) ** power, 0);
      expect(sum / moment).toBeCloseTo(1, 10);
      moment *= power + 1;
    }
    expect(nodes).toEqual(nodes.toSorted((a, b) => a - b));
    for (const [i, node] of nodes.entries()) expect(node).toBeCloseTo(-(nodes[n - 1 - i] ?? NaN), 12);
  });
  it('integrates what is no polynomial: E e^Z = √e', () => {
    const { nodes, weights } = gaussHermite(20);
    const mean = weights.reduce((sum, weight, i) => sum + weight * Math.exp(nodes[i] ?? NaN), 0);
    expect(mean).toBeCloseTo(Math.sqrt(Math.E), 12);
  });
  it.each([0, 65, 2.5, NaN])('refuses %d nodes', (n) => {
    expect(() => gaussHermite(n)).toThrow(RangeError);
  });
});
