import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { courtFrame, keyPath, threePointPath } from '../../renderer/charts/courtFrame.ts';
import { COURTS, RULE_SETS } from '../../renderer/court/ruleSets.ts';
import { SPOTS, spotPoint } from '../../renderer/court/spots.ts';

const rules = fc.constantFrom(...RULE_SETS);
const metres = fc.double({ min: -15, max: 15, noNaN: true });

describe('the drawing of the court', () => {
  it('goes from the floor to the drawing and back', () => {
    fc.assert(
      fc.property(rules, metres, metres, (set, x, y) => {
        const frame = courtFrame(COURTS[set]);
        const back = frame.toFloor(frame.toDrawing({ x, y }));
        expect(back.x).toBeCloseTo(x, 9);
        expect(back.y).toBeCloseTo(y, 9);
      }),
    );
  });
  it('is to scale, with left on the left and the basket at the top', () => {
    fc.assert(
      fc.property(rules, metres, metres, metres, metres, (set, ax, ay, bx, by) => {
        const frame = courtFrame(COURTS[set]);
        const [a, b] = [frame.toDrawing({ x: ax, y: ay }), frame.toDrawing({ x: bx, y: by })];
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(100 * Math.hypot(ax - bx, ay - by), 6);
        expect(b.x - a.x).toBeCloseTo(100 * (bx - ax), 6);
        expect(b.y - a.y).toBeCloseTo(100 * (by - ay), 6);
      }),
    );
  });
  it.each(RULE_SETS)('%s: every spot is on it, with room for its mark', (set) => {
    const court = COURTS[set];
    const frame = courtFrame(court);
    for (const spot of SPOTS) {
      const { x, y } = frame.toDrawing(spotPoint(spot, court));
      expect(Math.min(x, y, frame.width - x, frame.height - y)).toBeGreaterThan(40);
    }
  });
  it.each(RULE_SETS)('%s: the three-point line runs from endline to endline through one arc', (set) => {
    const court = COURTS[set];
    const numbers =
      threePointPath(court)
        .match(/-?[\d.]+/g)
        ?.map(Number) ?? [];
    const [fromX = NaN, fromY = NaN, leftX = NaN, leftY = NaN, radius, , , , , rightX = NaN, rightY = NaN] =
      numbers;
    const frame = courtFrame(court);
    const rim = frame.toDrawing({ x: 0, y: 0 });
    expect(fromY).toBe(0);
    expect(fromX).toBe(leftX);
    expect(radius).toBeCloseTo(court.arcRadius * 100, 1);
    // Both ends of the arc are an arc's radius from the rim; the path is written to the millimetre.
    expect(Math.hypot(leftX - rim.x, leftY - rim.y)).toBeCloseTo(court.arcRadius * 100, 0);
    expect(Math.hypot(rightX - rim.x, rightY - rim.y)).toBeCloseTo(court.arcRadius * 100, 0);
    expect(keyPath(court)).toMatch(/^M[\d. ]+(L[\d. ]+){3}M[\d. ]+A/);
  });
});
