import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';

import { dropReach, SpotDrops, type SpotDropMark } from '../../renderer/charts/SpotDrops.tsx';
import { COURTS } from '../../renderer/court/ruleSets.ts';
import { spotPoint, type Spot } from '../../renderer/court/spots.ts';
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
  renderToStaticMarkup(<SpotDrops court={COURT} label="Drops" marks={marks} write={String} />);

describe('the drops on the court', () => {
  it('stand as an open square as shot above a filled one evened out', () => {
    const markup = drawn([mark('top'), mark('left-wing')]);
    expect(count(markup, 'class="mark drop open"')).toBe(2);
    expect(count(markup, 'class="mark drop"')).toBe(2);
    expect(count(markup, 'class="span drop"')).toBe(4);
    expect(textOf(markup)).toBe('18 7 18 7');
  });

  it('show a spot never shot under pressure by a broken edge and no figure as shot', () => {
    const markup = drawn([mark('top', { raw: null, byOthers: true }), mark('left-wing')]);
    expect(count(markup, 'class="spot-card broken"')).toBe(1);
    expect(count(markup, 'class="spot-card"')).toBe(1);
    expect(textOf(markup)).toBe('none 7 18 7');
  });

  it('share a scale on which every figure stands; a span of few shots may run beyond it', () => {
    expect(dropReach([mark('top')])).toBe(20);
    expect(dropReach([mark('top'), mark('left-wing', { model: { points: 7, low: -3, high: 21 } })])).toBe(30);
    expect(dropReach([mark('top', { raw: { points: -55, low: -80, high: -20 } })])).toBe(60);
    expect(dropReach([mark('top', { raw: null })])).toBe(20);
  });
});
