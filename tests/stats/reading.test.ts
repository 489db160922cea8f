import { describe, expect, it } from 'vitest';

import { evidenceOf, LEAST_PRESSURED, LEAST_SESSIONS, needsOf } from '../../renderer/stats/reading.ts';
import { modelData } from '../../renderer/stats/model/modelData.ts';
import { freeThrows, roundOf, three } from './rounds.ts';

describe('a first verdict', () => {
  const have = (attempts: number, sessions: number) => ({
    relaxed: { makes: 240, attempts: 400 },
    pressured: { makes: 30, attempts },
    sessions,
  });

  it('waits for shots and sessions and says how many', () => {
    expect(needsOf(have(LEAST_PRESSURED - 40, 6))).toEqual({ pressured: 40, sessions: 0 });
    expect(needsOf(have(200, LEAST_SESSIONS - 3))).toEqual({ pressured: 0, sessions: 3 });
    expect(needsOf(evidenceOf([]))).toEqual({ pressured: 100, sessions: 4 });
  });
  it('is due where there is enough, and more is not owed back', () => {
    expect(needsOf(have(LEAST_PRESSURED, LEAST_SESSIONS))).toEqual({ pressured: 0, sessions: 0 });
    expect(needsOf(have(500, 40))).toEqual({ pressured: 0, sessions: 0 });
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
  it('counts sessions as the model does: two days of one name are two', () => {
    const days = ['2026-03-02', '2026-03-03'].flatMap((date) => [
      roundOf('relaxed', [freeThrows(8, 10)], { date, session: 'evening' }),
      roundOf('pressured', [freeThrows(6, 10)], { date, session: 'evening' }),
    ]);
    expect(evidenceOf(days).sessions).toBe(2);
    expect(modelData(days).sessions.count).toBe(2);
    // One condition on each day is no session with both.
    expect(evidenceOf(days.slice(1, 3)).sessions).toBe(0);
  });
  it('is empty without rounds', () => {
    expect(evidenceOf([]).sessions).toBe(0);
  });
});
