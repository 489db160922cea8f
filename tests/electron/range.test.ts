import * as fc from 'fast-check';
import { expect, test } from 'vitest';

import { byteRange } from '../../electron/range.ts';

// RFC 9110, section 14.1.2: the examples for a file of 10,000 bytes.
test.each([
  ['bytes=0-499', 0, 500],
  ['bytes=500-999', 500, 1000],
  ['bytes=-500', 9500, 10_000],
  ['bytes=9500-', 9500, 10_000],
  ['bytes=0-0', 0, 1],
  ['bytes=-1', 9999, 10_000],
])('RFC 9110: %s of 10,000 bytes', (header, start, end) => {
  expect(byteRange(header, 10_000)).toEqual({ start, end });
});

test.each([null, '', 'bytes', 'bytes=', 'bytes=-', 'bytes=a-b', 'bytes=5-4', 'bytes=0-0,-1', 'items=0-5'])(
  'the whole file for %s',
  (header) => {
    expect(byteRange(header, 10_000)).toBeNull();
  },
);

test('nothing lies beyond the end, in the last nought bytes, or in an empty file', () => {
  expect(byteRange('bytes=10000-', 10_000)).toBe('unsatisfiable');
  expect(byteRange('bytes=-0', 10_000)).toBe('unsatisfiable');
  expect(byteRange('bytes=0-', 0)).toBe('unsatisfiable');
  expect(byteRange('bytes=-5', 0)).toBe('unsatisfiable');
});

test('a part always lies inside the file and is never empty', () => {
  const number = fc.option(fc.nat(200), { nil: '' });
  fc.assert(
    fc.property(number, number, fc.nat(100), (first, last, size) => {
      const range = byteRange(`bytes=${first}-${last}`, size);
      if (range === null || range === 'unsatisfiable') return;
      expect(range.start).toBeGreaterThanOrEqual(0);
      expect(range.end).toBeGreaterThan(range.start);
      expect(range.end).toBeLessThanOrEqual(size);
    }),
  );
});
