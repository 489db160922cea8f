import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import { describe, expect, it } from 'vitest';

import { contrast, coloursOf } from '../tools/contrast.ts';

const css = readFileSync(join(import.meta.dirname, '../../renderer/screens/styles/theme.css'), 'utf8');

describe('the contrast of two colours', () => {
  // Worked from the definition of contrast ratio in WCAG 2.2; 21:1 and 1:1 are the ends it names itself.
  it.each([
    ['#000000', '#ffffff', 21],
    ['#ffffff', '#ffffff', 1],
    ['#767676', '#fff', 4.5422],
    ['#777', '#ffffff', 4.4781],
    ['#595959', '#ffffff', 7.0047],
    ['#949494', '#ffffff', 3.0335],
    ['#959595', '#ffffff', 2.9953],
    ['#ff0000', '#ffffff', 3.9985],
    ['#0000ff', '#ffffff', 8.5925],
  ])('of %s on %s is %d', (one, other, ratio) => {
    expect(contrast(one, other)).toBeCloseTo(ratio, 4);
    expect(contrast(other, one)).toBeCloseTo(ratio, 4);
  });
});

describe.each([
  ['dark', ':root'],
  ['light', ":root[data-theme='light']"],
])('the %s colours', (_, selector) => {
  const colours = coloursOf(css, selector);
  const between = (one: string, other: string): number => {
    const [a, b] = [colours.get(one), colours.get(other)];
    if (a === undefined || b === undefined) throw new Error(`The theme has no ${one} or no ${other}.`);
    return contrast(a, b);
  };
  const GROUNDS = ['ground', 'panel', 'panel-strong'];

  // WCAG 2.2 asks for 4.5:1 (SC 1.4.3, AA). A screen read from three metres, tired, gets 7:1 (SC 1.4.6, AAA).
  it.each([
    ['text', GROUNDS],
    ['quiet', GROUNDS],
    // These stand on no button.
    ['pressured', ['ground', 'panel']],
    ['relaxed', ['ground', 'panel']],
    ['warn', ['ground', 'panel']],
  ])('keep %s words at 7:1 on what they stand on', (words, grounds) => {
    for (const ground of grounds) expect(between(words, ground), ground).toBeGreaterThanOrEqual(7);
  });

  it('keep the words of the main button at 7:1', () => {
    expect(between('on-act', 'act')).toBeGreaterThanOrEqual(7);
  });

  // SC 1.4.11 (AA): what shows where a control is, and where the focus stands.
  it.each(['line', 'act', 'focus'])('keep %s at 3:1 on every ground', (edge) => {
    for (const ground of GROUNDS) expect(between(edge, ground), ground).toBeGreaterThanOrEqual(3);
  });
});
