import * as fc from 'fast-check';
import { expect, test } from 'vitest';

import { timeline } from '../../renderer/sound/timeline.ts';

test('a timeline goes on from where it was, whatever it follows next', () => {
  const moment = fc.double({ min: 0, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(
      moment,
      fc.array(fc.tuple(moment, fc.double({ min: 0, max: 100, noNaN: true }))),
      (first, later) => {
        let source = first;
        const clock = timeline(() => source);
        for (const [start, passed] of later) {
          const before = clock.now();
          let next = start;
          clock.follow(() => next);
          expect(clock.now()).toBeCloseTo(before, 6);
          next += passed;
          expect(clock.now()).toBeCloseTo(before + passed, 6);
          source = next;
        }
      },
    ),
  );
});

test('a timeline says where its moments lie on its source, and back', () => {
  const clock = timeline(() => 500);
  clock.follow(() => 3);
  expect(clock.now()).toBe(500);
  expect(clock.toSource(502)).toBe(5);
  expect(clock.fromSource(5)).toBe(502);
});
