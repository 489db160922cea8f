import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { apart } from '../../renderer/charts/apart.ts';
import { courtFrame } from '../../renderer/charts/courtFrame.ts';
import { COURTS, RULE_SETS } from '../../renderer/court/ruleSets.ts';
import { spotPoint, SPOTS } from '../../renderer/court/spots.ts';

const FRAME = { width: 1500, height: 1000 };
const LEAST = 140;
const point = fc.record({ x: fc.integer({ min: 0, max: 1500 }), y: fc.integer({ min: 0, max: 1000 }) });

describe('discs around points', () => {
  it('stand inside the frame, and do not touch where a few of them have room', () => {
    fc.assert(
      fc.property(fc.array(point, { maxLength: 6 }), (points) => {
        const moved = apart(points, LEAST, FRAME);
        expect(moved).toHaveLength(points.length);
        for (const [at, { x, y }] of moved.entries()) {
          expect(Math.min(x, y, FRAME.width - x, FRAME.height - y)).toBeGreaterThanOrEqual(LEAST / 2 - 1e-6);
          for (const other of moved.slice(at + 1)) {
            expect(Math.hypot(x - other.x, y - other.y)).toBeGreaterThan(0.9 * LEAST);
          }
        }
      }),
    );
  });

  it.each(RULE_SETS)('stay where the shooter stands with all spots of a %s court on a phone', (rules) => {
    const court = COURTS[rules];
    const frame = courtFrame(court);
    const points = SPOTS.map((spot) => frame.toDrawing(spotPoint(spot, court)));
    // The court is 304 pixels wide there, a disc 28.
    const moved = apart(points, (28 * frame.width) / 304, frame);
    for (const [at, { x, y }] of moved.entries()) {
      const from = points[at] ?? { x: NaN, y: NaN };
      expect(Math.hypot(x - from.x, y - from.y)).toBeLessThan(60);
    }
  });
});
