import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { cellKey, cellsOf, matchedDrop, simpleDrop, type Stratum } from '../../renderer/stats/drop.ts';
import { coverageOf, matched } from '../bench/coverage.ts';
import { freeThrows, roundOf, three } from './rounds.ts';

const tally = (makes: number, attempts: number) => ({ makes, attempts });
const stratum = (rx: number, rn: number, px: number, pn: number): Stratum => ({
  relaxed: tally(rx, rn),
  pressured: tally(px, pn),
});

describe('one place', () => {
  // 15 of 25 relaxed, 10 of 25 pressured: Newcombe's method 10, computed once with R.
  const golden = stratum(15, 25, 10, 25);

  it.each([
    [0.9, -3.08, 40.31],
    [0.95, -7.24, 43.47],
  ])('is method 10 at level %d', (level, low, high) => {
    const drop = matchedDrop([golden], level);
    expect(drop?.points).toBeCloseTo(20, 10);
    expect(drop?.low).toBeCloseTo(low, 2);
    expect(drop?.high).toBeCloseTo(high, 2);
    expect(drop?.effective.relaxed).toBeCloseTo(25, 10);
  });
  it('equals the simple drop exactly', () => {
    fc.assert(
      fc.property(stratumOf(1, 200), (one) => {
        const simple = simpleDrop(one.relaxed, one.pressured, 0.9);
        const drop = matchedDrop([one], 0.9);
        expect(drop?.points).toBeCloseTo(simple?.points ?? NaN, 8);
        expect(drop?.low).toBeCloseTo(simple?.low ?? NaN, 8);
        expect(drop?.high).toBeCloseTo(simple?.high ?? NaN, 8);
      }),
    );
  });
});

describe('many places', () => {
  it('weighs them as Mantel and Haenszel do', () => {
    // Weights 20·10/30 and 10·10/20, by hand: 20/3 and 5.
    const drop = matchedDrop([stratum(10, 20, 4, 10), stratum(8, 10, 6, 10)], 0.9);
    const w = 20 / 3 / (20 / 3 + 5);
    expect(drop?.points).toBeCloseTo(100 * (w * 0.1 + (1 - w) * 0.2), 10);
    expect(drop?.rates.relaxed).toBeCloseTo(w * 0.5 + (1 - w) * 0.8, 12);
    expect(drop?.rates.pressured).toBeCloseTo(w * 0.4 + (1 - w) * 0.6, 12);
  });
  it('does not take a changed mix for pressure', () => {
    // 40 % threes and 80 % free throws in both conditions; under pressure mostly free throws.
    const mix = [stratum(80, 200, 8, 20), stratum(16, 20, 160, 200)];
    expect(matchedDrop(mix, 0.9)?.points).toBeCloseTo(0, 10);
    expect(simpleDrop(tally(96, 220), tally(168, 220), 0.9)?.points).toBeLessThan(-30);
  });
  it('leaves out places seen in one condition and says how many shots', () => {
    const drop = matchedDrop([stratum(10, 20, 4, 10), stratum(5, 8, 0, 0), stratum(0, 0, 1, 3)], 0.9);
    expect(drop?.matchedShots).toEqual({ relaxed: 20, pressured: 10 });
    expect(drop?.leftOut).toEqual({ relaxed: 8, pressured: 3 });
  });
  it('says nothing where no place was seen in both', () => {
    expect(matchedDrop([stratum(5, 8, 0, 0), stratum(0, 0, 1, 3)], 0.9)).toBeNull();
    expect(matchedDrop([], 0.9)).toBeNull();
    expect(simpleDrop(tally(1, 2), tally(0, 0), 0.9)).toBeNull();
  });
  it('claims no certainty from places where all went in', () => {
    const drop = matchedDrop([stratum(5, 5, 5, 5), stratum(5, 5, 5, 5)], 0.9);
    expect(drop?.points).toBe(0);
    expect(drop?.low).toBeLessThan(-10);
    expect(drop?.high).toBeGreaterThan(10);
  });
});

function stratumOf(least: number, most: number): fc.Arbitrary<Stratum> {
  const one = fc
    .integer({ min: least, max: most })
    .chain((attempts) =>
      fc.record({ makes: fc.integer({ min: 0, max: attempts }), attempts: fc.constant(attempts) }),
    );
  return fc.record({ relaxed: one, pressured: one });
}

describe('laws', () => {
  const places = fc.array(stratumOf(1, 60), { minLength: 1, maxLength: 12 });

  it('holds its own estimate and stays within ± 100 points', () => {
    fc.assert(
      fc.property(places, (strata) => {
        const drop = matchedDrop(strata, 0.9);
        expect(drop?.low).toBeLessThanOrEqual(drop?.points ?? NaN);
        expect(drop?.high).toBeGreaterThanOrEqual(drop?.points ?? NaN);
        expect(Math.abs(drop?.low ?? NaN)).toBeLessThanOrEqual(100 + 1e-9);
        expect(Math.abs(drop?.high ?? NaN)).toBeLessThanOrEqual(100 + 1e-9);
      }),
    );
  });
  it('swapping the conditions mirrors it', () => {
    fc.assert(
      fc.property(places, (strata) => {
        const one = matchedDrop(strata, 0.9);
        const other = matchedDrop(
          strata.map(({ relaxed, pressured }) => ({ relaxed: pressured, pressured: relaxed })),
          0.9,
        );
        expect(other?.points).toBeCloseTo(-(one?.points ?? NaN), 8);
        expect(other?.low).toBeCloseTo(-(one?.high ?? NaN), 8);
        expect(other?.high).toBeCloseTo(-(one?.low ?? NaN), 8);
      }),
    );
  });
  it('four times the shots at the same rates narrow it', () => {
    fc.assert(
      fc.property(places, (strata) => {
        const four = ({ makes, attempts }: { makes: number; attempts: number }) =>
          tally(4 * makes, 4 * attempts);
        const few = matchedDrop(strata, 0.9);
        const many = matchedDrop(
          strata.map(({ relaxed, pressured }) => ({ relaxed: four(relaxed), pressured: four(pressured) })),
          0.9,
        );
        const width = (drop: typeof few) => (drop?.high ?? NaN) - (drop?.low ?? NaN);
        expect(width(many)).toBeLessThan(width(few));
      }),
    );
  });
});

// tests/bench/coverage.ts prints the same for more worlds and against rivals.
describe('coverage of the 90 % interval, 8 places of 5 to 25 shots, 3000 simulated records', () => {
  it.each([0, 5, 10])('true drop %d points', (drop) => {
    const { coverage } = coverageOf(matched, { drop, shots: [5, 25], easierPressured: false }, 3000, 11);
    expect(coverage).toBeGreaterThan(0.87);
    expect(coverage).toBeLessThan(0.94);
  });
});

describe('cells of rounds', () => {
  it('adds up by spot, kind of shot and condition', () => {
    const cells = cellsOf([
      roundOf('relaxed', [three('top', 3, 5), freeThrows(8, 10)]),
      roundOf('relaxed', [three('top', 1, 5)]),
      roundOf('pressured', [three('top', 2, 5)]),
    ]);
    expect(cells.get(cellKey('top', 'catch'))).toEqual({
      spot: 'top',
      shot: 'catch',
      relaxed: tally(4, 10),
      pressured: tally(2, 5),
    });
    expect(cells.get(cellKey('free-throw', 'free-throw'))?.pressured).toEqual(tally(0, 0));
    expect(cells.size).toBe(2);
  });
});
