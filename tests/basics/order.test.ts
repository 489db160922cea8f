import * as fc from 'fast-check';
import { expect, it } from 'vitest';

import { byText } from '../../renderer/basics/order.ts';

it('texts stand in one order, dates by their day', () => {
  expect(['2026-11-02', '2026-03-30', 'b', 'B', 'a'].toSorted(byText)).toEqual([
    '2026-03-30',
    '2026-11-02',
    'B',
    'a',
    'b',
  ]);
  fc.assert(
    fc.property(fc.string(), fc.string(), (a, b) => {
      expect(byText(a, b)).toBe(0 - byText(b, a));
      expect(byText(a, b) === 0).toBe(a === b);
    }),
  );
});
