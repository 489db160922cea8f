import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { courtFrame, type DrawnPoint } from '../../renderer/charts/courtFrame.ts';
import { leaderEnd, placeCards, type Size } from '../../renderer/charts/placeCards.ts';
import { COURTS, RULE_SETS } from '../../renderer/court/ruleSets.ts';
import { spotPoint, SPOTS } from '../../renderer/court/spots.ts';

const overlap = (a: DrawnPoint, b: DrawnPoint, card: Size) =>
  Math.abs(a.x - b.x) < card.width - 1e-6 && Math.abs(a.y - b.y) < card.height - 1e-6;
const farFrom = (point: DrawnPoint, centre: DrawnPoint, card: Size) => {
  const { x, y } = leaderEnd(point, centre, card);
  return Math.hypot(point.x - x, point.y - y);
};

/** What a reader could mistake. */
function mistakes(points: readonly DrawnPoint[], places: readonly DrawnPoint[], card: Size): string[] {
  return places.flatMap((place, at) => {
    const own = points[at] ?? place;
    const far = farFrom(own, place, card);
    const end = leaderEnd(own, place, card);
    return points.flatMap((point, other) => {
      if (other === at) return far > 0 ? [] : [`${at} lies on its own point`];
      const there = places[other] ?? place;
      const middle = { x: (own.x + end.x) / 2, y: (own.y + end.y) / 2 };
      return [
        overlap(place, there, card) ? `${at} lies on ${other}` : '',
        farFrom(point, place, card) <= far ? `${at} is nearer to the point of ${other}` : '',
        farFrom(middle, there, card) === 0 ? `the leader of ${at} runs under ${other}` : '',
      ].filter((words) => words !== '');
    });
  });
}

describe('cards beside their points', () => {
  // A tablet that lies, with and without the bars of a browser: the court is 967 or 880 pixels wide, a card 228 by 96.
  it.each(
    (['FIBA', 'NBA', 'WNBA', 'NCAA'] as const).flatMap((rules) =>
      [967, 880].map((width) => [rules, width] as const),
    ),
  )('cannot be mistaken with all spots of a %s court %i pixels wide', (rules, width) => {
    const frame = courtFrame(COURTS[rules]);
    const unit = frame.width / width;
    const card = { width: 228 * unit, height: 96 * unit };
    const points = SPOTS.map((spot) => frame.toDrawing(spotPoint(spot, COURTS[rules])));
    const places = placeCards(points, card, frame);
    expect(places).toHaveLength(SPOTS.length);
    expect(mistakes(points, places ?? [], card)).toEqual([]);
  });

  it.each(RULE_SETS)('find no room on a %s court as narrow as a phone', (rules) => {
    const frame = courtFrame(COURTS[rules]);
    const unit = frame.width / 304;
    const points = SPOTS.map((spot) => frame.toDrawing(spotPoint(spot, COURTS[rules])));
    expect(placeCards(points, { width: 228 * unit, height: 96 * unit }, frame)).toBeNull();
  });

  const FRAME = { width: 1500, height: 1000 };
  const CARD = { width: 300, height: 120 };
  const point = fc.record({ x: fc.integer({ min: 40, max: 1460 }), y: fc.integer({ min: 40, max: 960 }) });

  it('stay inside the frame and cannot be mistaken, or there is no room for them', () => {
    fc.assert(
      fc.property(fc.array(point, { maxLength: 8 }), (points) => {
        const places = placeCards(points, CARD, FRAME);
        if (!places) return;
        expect(places).toHaveLength(points.length);
        expect(mistakes(points, places, CARD)).toEqual([]);
        for (const { x, y } of places) {
          expect(x).toBeGreaterThanOrEqual(CARD.width / 2);
          expect(x).toBeLessThanOrEqual(FRAME.width - CARD.width / 2);
          expect(y).toBeGreaterThanOrEqual(CARD.height / 2);
          expect(y).toBeLessThanOrEqual(FRAME.height - CARD.height / 2);
        }
      }),
    );
  });

  it('always find a place for one, wherever its point is', () => {
    fc.assert(
      fc.property(point, (one) => {
        expect(placeCards([one], CARD, FRAME)).toHaveLength(1);
      }),
    );
  });

  it('find none for two points on one place', () => {
    const twice = { x: 700, y: 500 };
    expect(placeCards([twice, twice], CARD, FRAME)).toBeNull();
  });
});
