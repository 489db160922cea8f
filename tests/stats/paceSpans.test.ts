import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Entry } from '../../renderer/log/book.ts';
import { spansOf, withoutStops } from '../../renderer/stats/paceSpans.ts';
import { timedRound } from './timedRounds.ts';

const single = (seconds: number) => ({ seconds, shots: 1 });

describe('how long shots took', () => {
  it('is the time from one shot noted to the next', () => {
    expect(spansOf(timedRound([6, 7.5, 4]))).toEqual([single(6), single(7.5), single(4)]);
    expect(spansOf(timedRound([]))).toEqual([]);
  });
  it('leaves out what lies around a pause, and what no shot takes', () => {
    const round = timedRound([6, 7, 30, 5, 121, 8]);
    // The third shot is noted 14 s after the start; the round is paused and taken up again before the fourth.
    expect(spansOf({ ...round, breaks: [20_000, 38_000] })).toEqual([
      single(6),
      single(7),
      single(5),
      single(8),
    ]);
  });
  it('knows nothing around a count or a turn that the clock took', () => {
    const { entries } = timedRound([6, 7, 8, 5]);
    const changed = entries.map((entry, at): Entry => {
      if (at !== 2) return entry;
      return { kind: 'expired', id: 'late', at: entry.at, stop: 0 };
    });
    expect(spansOf({ entries: changed })).toEqual([single(6), single(5)]);
  });
  it('lets shots noted in one go share their time', () => {
    expect(spansOf(timedRound([6, 18, 0.4, 0.3, 7]))).toEqual([
      single(6),
      { seconds: expect.closeTo(18.7, 9) as unknown, shots: 3 },
      single(7),
    ]);
    // A whole round noted from memory says nothing.
    expect(spansOf(timedRound([0.4, 0.5, 0.3, 0.6]))).toEqual([]);
  });
  it('does not join across a pause', () => {
    const round = timedRound([6, 5, 0.5]);
    expect(spansOf({ ...round, breaks: [11_000] })).toEqual([single(6)]);
  });
  it('does not believe a clock that was set back', () => {
    expect(spansOf(timedRound([6, -40, 7]))).toEqual([single(6), single(7)]);
  });
  it('leaves out what took five times as long as usual', () => {
    const usual = [5, 6, 7, 6, 6].map(single);
    expect(withoutStops([...usual, single(29), single(31)])).toEqual([...usual, single(29)]);
    expect(withoutStops([...usual, { seconds: 31, shots: 3 }])).toHaveLength(6);
    expect(withoutStops([])).toEqual([]);
  });
  it('never finds more time or more shots than there were', () => {
    const gap = fc.double({ min: 0, max: 200, noNaN: true });
    fc.assert(
      fc.property(fc.array(gap, { maxLength: 30 }), fc.array(fc.nat(3_000_000)), (gaps, breaks) => {
        const spans = spansOf({ ...timedRound(gaps), breaks });
        const all = spans.reduce((sum, { seconds }) => sum + seconds, 0);
        expect(all).toBeLessThanOrEqual(gaps.reduce((sum, one) => sum + one, 0) + 0.001 * gaps.length);
        expect(spans.reduce((sum, { shots }) => sum + shots, 0)).toBeLessThanOrEqual(gaps.length);
        for (const { seconds, shots } of withoutStops(spans)) {
          expect(seconds / shots).toBeGreaterThanOrEqual(1);
          expect(seconds / shots).toBeLessThanOrEqual(120);
        }
      }),
    );
  });
});
