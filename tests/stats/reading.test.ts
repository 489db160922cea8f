import { describe, expect, it } from 'vitest';

import { evidenceOf, LEAST_PRESSURED, LEAST_SESSIONS, reading } from '../../renderer/stats/reading.ts';
import { freeThrows, roundOf, three } from './rounds.ts';

const enough = {
  relaxed: { makes: 240, attempts: 400 },
  pressured: { makes: 100, attempts: 200 },
  sessions: 6,
};
const between = (low: number, high: number) => ({ points: (low + high) / 2, low, high });

describe('a verdict', () => {
  it.each([
    ['drop', 1, 12],
    ['gain', -12, -1],
    ['unclear', -4, 9],
    ['unclear', 0, 9],
    ['same', -2.5, 2.9],
    ['same', 0.5, 2.9],
    ['unclear', -2.5, 3.1],
  ])('is %s from %d to %d points', (kind, low, high) => {
    expect(reading(between(low, high), enough).kind).toBe(kind);
  });
  it('speaks in whole points, never in −0', () => {
    const read = reading({ points: 5.6, low: -0.4, high: 11.5 }, enough);
    expect(read).toMatchObject({ points: 6, low: 0, high: 12 });
    expect(Object.is(read.kind === 'unclear' && read.low, 0)).toBe(true);
  });
  it('waits for shots and sessions and says how many', () => {
    const few = { ...enough, pressured: { makes: 30, attempts: LEAST_PRESSURED - 40 } };
    expect(reading(between(1, 12), few)).toMatchObject({
      kind: 'none',
      needs: { pressured: 40, sessions: 0 },
    });
    const once = { ...enough, sessions: LEAST_SESSIONS - 3 };
    expect(reading(between(1, 12), once)).toMatchObject({
      kind: 'none',
      needs: { pressured: 0, sessions: 3 },
    });
    const nothing = { relaxed: { makes: 0, attempts: 0 }, pressured: { makes: 0, attempts: 0 }, sessions: 0 };
    const read = reading(null, nothing);
    expect(read).toMatchObject({ kind: 'none', needs: { pressured: 100, sessions: 4 } });
    expect(read.more.five?.pressured).toBeGreaterThan(read.more.ten?.pressured ?? NaN);
  });
});

describe('evidence', () => {
  it('counts matched shots, and sessions with both conditions', () => {
    const evidence = evidenceOf([
      roundOf('relaxed', [three('top', 3, 5), freeThrows(8, 10)], { session: 'a' }),
      roundOf('pressured', [three('top', 2, 5)], { session: 'a' }),
      roundOf('relaxed', [three('top', 1, 5)], { session: 'b' }),
      roundOf('pressured', [three('left-wing', 1, 5)], { session: 'c' }),
    ]);
    expect(evidence).toEqual({
      relaxed: { makes: 4, attempts: 10 },
      pressured: { makes: 2, attempts: 5 },
      sessions: 1,
    });
  });
  it('counts no session whose shots of the two kinds are of different places', () => {
    const apart = [
      roundOf('relaxed', [freeThrows(8, 10), three('top', 2, 5)], { session: 'a' }),
      roundOf('pressured', [three('left-wing', 2, 5)], { session: 'a' }),
    ];
    expect(evidenceOf(apart).sessions).toBe(0);
    const along = roundOf('pressured', [freeThrows(6, 10)], { session: 'a' });
    expect(evidenceOf([...apart, along]).sessions).toBe(1);
  });
  it('is empty without rounds', () => {
    expect(evidenceOf([]).sessions).toBe(0);
  });
});
