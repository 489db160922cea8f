import { describe, expect, it } from 'vitest';

import type { Known } from '../../bench/priorRecord.ts';
import {
  dayOne,
  likeWithLike,
  regression,
  scenarioOf,
  shootersOf,
  told,
  together,
} from '../../bench/simpleWays.ts';

/*
 * Why there is a model: what simpler ways to a drop do with simulated shooters of known truth. The figures to compare with
 * are this project's own study, 150 to 200 shooters each, whose spots were mixed a little differently. What the model does
 * with such shooters: `npm run bench -- modelCoverage`.
 */

/** Three standard errors of a share of about 0.8, measured by 100 here and 150 there. */
const SHARE_APART = 0.155;

const known = new Map<string, readonly Known[]>();

function shooters(name: string): readonly Known[] {
  const found = known.get(name) ?? shootersOf(scenarioOf(name), 100, 70_000);
  known.set(name, found);
  return found;
}

describe('all shots thrown together', () => {
  it.each([
    ['casual, 4 weeks, drop 0', -5.8, 6.2, 0.2],
    ['casual, 12 weeks, drop 0', -5.8, 6, 0.01],
    ['casual, 12 weeks, drop 5', -6.1, 6.2, 0],
    ['casual, 12 weeks, drop 10', -6.3, 6.4, 0],
    ['pressured rounds three-heavy, drop 5', 5.7, 5.8, 0],
    ['rounds noisy, drop 5', -6, 6.2, 0],
    ['pairs in random order, same mix, drop 5', -0.8, 1.4, 0.81],
  ])('%s: off by %d, RMSE %d, the interval holds the truth in a share of %d', (name, bias, rmse, cover) => {
    const found = told(shooters(name), together);
    expect(Math.abs(found.bias - bias)).toBeLessThan(1);
    expect(Math.abs(found.rmse - rmse)).toBeLessThan(1);
    expect(Math.abs(found.cover - cover)).toBeLessThan(cover < 0.1 ? 0.06 : SHARE_APART);
  });
});

describe('like with like, spot by spot', () => {
  it.each([
    ['casual, 4 weeks, drop 0', 2, 3.2, 0.78],
    ['casual, 12 weeks, drop 0', 1.9, 2.5, 0.63],
    ['casual, 12 weeks, drop 10', 1.7, 2.3, 0.69],
    ['pressured rounds three-heavy, drop 5', 1.9, 2.3, 0.63],
    ['drop drifts from 12 to 2, 12 weeks', 1.8, 2.5, 0.67],
  ])('%s: off by %d, since tired legs pass for pressure; RMSE %d, cover %d', (name, bias, rmse, cover) => {
    const found = told(shooters(name), likeWithLike);
    expect(Math.abs(found.bias - bias)).toBeLessThan(0.7);
    expect(Math.abs(found.rmse - rmse)).toBeLessThan(0.7);
    expect(Math.abs(found.cover - cover)).toBeLessThan(SHARE_APART);
  });
});

describe('the first day against the latest pressured round', () => {
  it.each([
    ['casual, 4 weeks, drop 0', -6.2, 14.3, 0.75],
    ['casual, 12 weeks, drop 0', -9.5, 15.9, 0.74],
  ])('%s: off by %d, RMSE %d, cover %d', (name, bias, rmse, cover) => {
    const found = told(shooters(name), dayOne);
    // One round against one day: three standard errors of the bias are 4 points.
    expect(Math.abs(found.bias - bias)).toBeLessThan(5);
    expect(found.bias).toBeLessThan(-2);
    expect(Math.abs(found.rmse - rmse)).toBeLessThan(3.5);
    expect(Math.abs(found.cover - cover)).toBeLessThan(SHARE_APART);
  });
});

describe('a plain logistic regression', () => {
  it.each([
    ['casual, 4 weeks, drop 0', 0.87],
    ['casual, 12 weeks, drop 0', 0.84],
  ])('%s: about right, but too sure of itself: cover %d', (name, cover) => {
    const found = told(shooters(name), regression);
    // 0.05 in log-odds is a little over one point.
    expect(Math.abs(found.bias)).toBeLessThan(0.05);
    expect(Math.abs(found.cover - cover)).toBeLessThan(0.12);
  });
});
