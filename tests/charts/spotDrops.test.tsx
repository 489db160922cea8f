import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';

import { CardsOnCourt, placesOnCourt } from '../../renderer/charts/CardsOnCourt.tsx';
import { NumberedSpots } from '../../renderer/charts/NumberedSpots.tsx';
import type { CardRow, SpotCardsProps } from '../../renderer/charts/spotCard.ts';
import { dropScale, SpotDrops, type SpotDropMark } from '../../renderer/charts/SpotDrops.tsx';
import { rateScale } from '../../renderer/charts/SpotMap.tsx';
import { COURTS } from '../../renderer/court/ruleSets.ts';
import { SPOTS, spotPoint, type Spot } from '../../renderer/court/spots.ts';
import { proportion } from '../../renderer/stats/proportion.ts';
import { count, textOf } from '../screens/seasons.ts';

const COURT = COURTS.FIBA;
const mark = (spot: Spot, change: Partial<SpotDropMark> = {}): SpotDropMark => ({
  name: spot,
  point: spotPoint(spot, COURT),
  raw: { points: 18, low: -4, high: 41 },
  model: { points: 7, low: 2, high: 13 },
  byOthers: false,
  ...change,
});
const drawn = (marks: readonly SpotDropMark[]): string =>
  renderToStaticMarkup(
    <SpotDrops court={COURT} label="Drops" marks={marks} write={(points) => String(Math.round(points))} />,
  );

describe('the drops on the court', () => {
  it('are listed by number, as shot above evened out, each with its unit and its span', () => {
    const markup = drawn([mark('top'), mark('left-wing')]);
    expect(count(markup, 'class="mark drop open"')).toBe(2 + 2);
    expect(count(markup, 'class="whisker drop"')).toBe(4);
    const [court = '', list = ''] = markup.split('<ol');
    expect(textOf(court)).toBe('1 2');
    const figures = 'as shot: 18 points evened out: 7 points';
    expect(textOf(`<ol${list}`)).toBe(`1 top ${figures} 2 left-wing ${figures}`);
  });

  it('write one point as one point', () => {
    const one = { points: 1.2, low: -3, high: 5 };
    expect(textOf(drawn([mark('top', { raw: null, model: one })]))).toContain('evened out: 1 point');
    expect(textOf(drawn([mark('top', { raw: null, model: one })]))).not.toContain('1 points');
  });

  it('show a spot never shot under pressure by a broken edge and no figure as shot', () => {
    const markup = drawn([mark('top', { raw: null, byOthers: true }), mark('left-wing')]);
    expect(count(markup, 'class="spot-card broken"')).toBe(1);
    expect(count(markup, 'class="spot-card"')).toBe(1);
    expect(textOf(markup)).toContain('1 top as shot: none evened out: 7 points');
  });

  it('share a scale on which every figure stands; a span of few shots may run beyond it, without an end', () => {
    expect(dropScale([mark('top')])).toEqual([-20, 20]);
    expect(dropScale([mark('top', { model: { points: 7, low: -3, high: 21 } })])).toEqual([-10, 30]);
    expect(dropScale([mark('top', { raw: { points: -55, low: -80, high: -20 } })])).toEqual([-60, 20]);
    expect(dropScale([mark('top', { raw: null })])).toEqual([-20, 20]);
    const ends = (markup: string): number => count(markup, '<line') - count(markup, 'spot-track');
    const inside = drawn([mark('top', { raw: { points: 5, low: -4, high: 12 } })]);
    const beyond = drawn([mark('top', { raw: { points: 5, low: -4, high: 41 } })]);
    expect(ends(inside) - ends(beyond)).toBe(1);
  });
});

describe('the rates on the court', () => {
  const rated = (makes: number, attempts: number) => ({
    makes,
    attempts,
    rate: proportion(makes, attempts, 0.9),
  });
  it('share a scale in whole tens around every span', () => {
    expect(rateScale([{ relaxed: rated(0, 0), pressured: rated(0, 0) }])).toEqual([0, 100]);
    const [good, poor] = [rated(90, 150), rated(60, 150)];
    const [from, to] = rateScale([{ relaxed: good, pressured: poor }]);
    expect([from % 10, to % 10]).toEqual([0, 0]);
    expect(from).toBeLessThanOrEqual(100 * (poor.rate?.low ?? NaN));
    expect(to).toBeGreaterThanOrEqual(100 * (good.rate?.high ?? NaN));
    expect(to - from).toBeGreaterThanOrEqual(50);
  });
});

describe('what stands at the spots', () => {
  const row = (of: string, open: boolean): CardRow => ({
    kind: 'drop',
    open,
    of,
    figure: '12',
    unit: 'points',
    span: { value: 12, low: 8, high: 16 },
  });
  const props: SpotCardsProps = {
    court: COURT,
    label: 'Drops',
    scale: { from: -20, to: 20, mark: 0 },
    cards: SPOTS.map((spot) => ({
      name: spot,
      point: spotPoint(spot, COURT),
      rows: [row('as shot', true), row('evened out', false)],
    })),
  };

  it('is a card with the name beside each spot, tied to it, on a wide court', () => {
    const places = placesOnCourt(props, 967);
    const markup = renderToStaticMarkup(<CardsOnCourt {...props} width={967} places={places ?? []} />);
    expect(count(markup, 'class="spot-card"')).toBe(SPOTS.length);
    expect(count(markup, 'class="spot-leader"')).toBe(SPOTS.length);
    for (const spot of SPOTS) expect(textOf(markup)).toContain(`${spot} 12 points 12 points`);
  });

  it('is a number on a narrow one, and the list under it', () => {
    expect(placesOnCourt(props, 760)).toBeNull();
    const markup = renderToStaticMarkup(<NumberedSpots {...props} width={304} />);
    expect(count(markup, 'class="spot-disc"')).toBe(SPOTS.length);
    expect(count(markup, '<li class="spot-card"')).toBe(SPOTS.length);
  });
});
