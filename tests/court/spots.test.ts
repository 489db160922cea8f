import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { arcMeetsStraight, COURTS, RULE_SETS } from '../../renderer/court/ruleSets.ts';
import {
  distanceToRim,
  isBeyondArc,
  isShotKind,
  isSpot,
  SHOT_KINDS,
  SHOT_WORDS,
  SPOTS,
  spotByName,
  spotPoint,
  spotWords,
  type Spot,
} from '../../renderer/court/spots.ts';

const THREES: readonly Spot[] = ['left-corner', 'left-wing', 'top', 'right-wing', 'right-corner'];
const PAIRS: readonly (readonly [Spot, Spot])[] = [
  ['left-corner', 'right-corner'],
  ['left-wing', 'right-wing'],
  ['left-elbow', 'right-elbow'],
];

describe.each(RULE_SETS)('on a %s court', (rules) => {
  const court = COURTS[rules];

  it.each(THREES)('%s is beyond the three-point line, by less than a stride', (spot) => {
    const point = spotPoint(spot, court);
    expect(isBeyondArc(point, court)).toBe(true);
    const besideStraight = point.y <= arcMeetsStraight(court);
    const line = besideStraight ? court.cornerDistance : court.arcRadius;
    const from = besideStraight ? Math.abs(point.x) : distanceToRim(point);
    expect(from - line).toBeCloseTo(0.3, 10);
  });
  it.each(['left-elbow', 'right-elbow', 'free-throw'] as const)('%s is inside it', (spot) => {
    expect(isBeyondArc(spotPoint(spot, court), court)).toBe(false);
  });
  it('the free throw is shot from behind its line, in the middle', () => {
    const { x, y } = spotPoint('free-throw', court);
    expect(x).toBe(0);
    expect(y).toBeGreaterThan(court.freeThrowFromRim);
  });
  it('the elbows are where the free-throw line meets the sides of the key', () => {
    expect(spotPoint('right-elbow', court)).toEqual({ x: court.keyWidth / 2, y: court.freeThrowFromRim });
  });
  it.each(PAIRS)('%s and %s mirror each other, left on the shooter’s left', (left, right) => {
    const [l, r] = [spotPoint(left, court), spotPoint(right, court)];
    expect(l.x).toBeCloseTo(-r.x, 12);
    expect(l.y).toBe(r.y);
    expect(l.x).toBeLessThan(0);
  });
  it.each(SPOTS)('%s is on the floor', (spot) => {
    const { x, y } = spotPoint(spot, court);
    expect(Math.abs(x)).toBeLessThan(court.width / 2);
    expect(y).toBeGreaterThanOrEqual(-court.rimFromEndline);
  });
  it('no two spots are in each other’s way', () => {
    const points = SPOTS.map((spot) => spotPoint(spot, court));
    for (const [at, a] of points.entries()) {
      for (const b of points.slice(at + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(1);
    }
  });
});

describe('the three-point line', () => {
  const court = COURTS.FIBA;

  it('counts two on the line and three beyond it', () => {
    expect(isBeyondArc({ x: 0, y: 6.75 }, court)).toBe(false);
    expect(isBeyondArc({ x: 0, y: 6.751 }, court)).toBe(true);
    expect(isBeyondArc({ x: 6.6, y: 0 }, court)).toBe(false);
    expect(isBeyondArc({ x: -6.601, y: 0 }, court)).toBe(true);
  });
  it('is nearer in the corner than at the arc', () => {
    // 6.65 m from the rim: a three from the corner, a two from the top.
    expect(isBeyondArc({ x: 6.65, y: 0 }, court)).toBe(true);
    expect(isBeyondArc({ x: 0, y: 6.65 }, court)).toBe(false);
  });
  it('is the same left and right, and stepping straight back never makes a three a two', () => {
    const coordinate = fc.double({ min: -8, max: 8, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...RULE_SETS), coordinate, coordinate, (rules, x, y) => {
        const here = isBeyondArc({ x, y }, COURTS[rules]);
        expect(isBeyondArc({ x: -x, y }, COURTS[rules])).toBe(here);
        const back = isBeyondArc({ x: x * 1.1, y: y > 0 ? y * 1.1 : y }, COURTS[rules]);
        expect(back || !here).toBe(true);
      }),
    );
  });
});

describe('names', () => {
  it('know the standard spots and kinds of shot, and no others', () => {
    expect(SPOTS.every(isSpot)).toBe(true);
    expect(SHOT_KINDS.every(isShotKind)).toBe(true);
    for (const other of ['Left corner', 'short corner', '', 'constructor']) {
      expect(isSpot(other)).toBe(false);
      expect(isShotKind(other)).toBe(false);
    }
  });
  it.each([
    ['left-corner', 'left-corner'],
    ['  Left  Corner ', 'left-corner'],
    ['top', 'top'],
    ['Top of the key', 'top'],
    ['Free-throw line', 'free-throw'],
    ['corner', null],
    ['', null],
  ])('%j means %j', (name, spot) => {
    expect(spotByName(name)).toBe(spot);
  });
  it('call a shooter’s own spot by its own name', () => {
    expect(spotWords('top')).toBe('Top of the key');
    expect(spotWords('Short corner')).toBe('Short corner');
    expect(new Set(SHOT_KINDS.map((kind) => SHOT_WORDS[kind])).size).toBe(SHOT_KINDS.length);
  });
});
