import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { courtFrame } from '../../renderer/charts/courtFrame.ts';
import { placeCards, type Size } from '../../renderer/charts/placeCards.ts';
import { COURTS, RULE_SETS } from '../../renderer/court/ruleSets.ts';
import { spotPoint, SPOTS } from '../../renderer/court/spots.ts';

const overlap = (a: { x: number; y: number }, b: { x: number; y: number }, card: Size) =>
  Math.abs(a.x - b.x) < card.width - 1e-6 && Math.abs(a.y - b.y) < card.height - 1e-6;

describe('cards beside their points', () => {
  // Screens of a tablet held either way: the court is about 960 and 730 pixels wide, a card 160 by 64.
  it.each(RULE_SETS.flatMap((rules) => [960, 730].map((width) => [rules, width] as const)))(
    'do not lie on each other with all spots of a %s court %i pixels wide',
    (rules, width) => {
      const frame = courtFrame(COURTS[rules]);
      const unit = frame.width / width;
      const card = { width: 160 * unit, height: 64 * unit };
      const points = SPOTS.map((spot) => frame.toDrawing(spotPoint(spot, COURTS[rules])));
      const places = placeCards(points, card, frame);
      for (const [at, place] of places.entries()) {
        for (const other of places.slice(at + 1)) expect(overlap(place, other, card)).toBe(false);
      }
    },
  );

  it('stay inside the frame, one for each point, wherever the points are', () => {
    const frame = { width: 1500, height: 1000 };
    const card = { width: 300, height: 120 };
    const point = fc.record({ x: fc.integer({ min: 0, max: 1500 }), y: fc.integer({ min: 0, max: 1000 }) });
    fc.assert(
      fc.property(fc.array(point, { maxLength: 12 }), (points) => {
        const places = placeCards(points, card, frame);
        expect(places).toHaveLength(points.length);
        for (const { x, y } of places) {
          expect(x).toBeGreaterThanOrEqual(card.width / 2);
          expect(x).toBeLessThanOrEqual(frame.width - card.width / 2);
          expect(y).toBeGreaterThanOrEqual(card.height / 2);
          expect(y).toBeLessThanOrEqual(frame.height - card.height / 2);
        }
      }),
    );
  });
});
