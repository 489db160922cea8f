import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  brakesOn,
  GOOD_SESSIONS,
  highestRung,
  RUNGS,
  rungOf,
  SEEN_BY,
  standingOn,
  stepsUp,
  suggestRung,
  type Brake,
  type LadderSession,
  type Rung,
} from '../../renderer/pressure/ladder.ts';

const on = (rung: Rung, change: Partial<LadderSession> = {}): LadderSession => ({
  rung,
  rose: true,
  held: true,
  hurt: false,
  ...change,
});
const COOL = { rose: false } as const;
const UNTOLD = { rose: null, held: null } as const;
const FELL = { held: false } as const;
const HURT = { held: false, hurt: true } as const;

describe('the rung of a round', () => {
  it('is what it leads to: a stake weighs more than any onlooker', () => {
    expect(SEEN_BY.map((seen) => rungOf({ stake: null, seen }))).toEqual([
      'logged',
      'watched',
      'filmed',
      'judged',
    ]);
    expect(SEEN_BY.map((seen) => rungOf({ stake: 'Loser sings', seen }))).toEqual(
      SEEN_BY.map(() => 'forfeit'),
    );
  });
});

// The rule itself is our own choice: up after two good sessions, down after one that hurt (common practice, no source).
describe('the suggestion', () => {
  it.each<readonly [string, readonly LadderSession[], Rung, string]>([
    ['nobody has shot yet', [], 'logged', 'first'],
    ['one good session', [on('watched')], 'watched', 'stay'],
    ['two good sessions', [on('watched'), on('watched')], 'filmed', 'up'],
    ['two good ones, the older a rung above', [on('watched'), on('judged')], 'filmed', 'up'],
    ['two good ones, the older a rung below', [on('watched'), on('logged')], 'watched', 'stay'],
    [
      'a session without nerves between two good ones',
      [on('watched'), on('watched', COOL), on('watched')],
      'filmed',
      'up',
    ],
    [
      'one that cannot tell between two good ones',
      [on('watched', UNTOLD), on('watched'), on('watched')],
      'filmed',
      'up',
    ],
    [
      'nerves rose but no round could tell',
      [on('watched', { held: null }), on('watched')],
      'watched',
      'stay',
    ],
    [
      'one that did not hold between two good ones',
      [on('watched'), on('watched', FELL), on('watched')],
      'watched',
      'stay',
    ],
    [
      'one that hurt between two good ones',
      [on('watched'), on('watched', HURT), on('watched')],
      'watched',
      'stay',
    ],
    ['never a nerve', [on('logged', COOL), on('logged', COOL), on('logged', COOL)], 'logged', 'stay'],
    ['the latest did not hold', [on('watched', FELL), on('watched'), on('watched')], 'watched', 'stay'],
    ['the latest hurt', [on('judged', HURT), on('judged'), on('judged')], 'filmed', 'down'],
    ['it held, but the shooter says it was too much', [on('filmed', { hurt: true })], 'watched', 'down'],
    ['the lowest hurt', [on('logged', HURT)], 'logged', 'stay'],
    ['two good ones at the top', [on('forfeit'), on('forfeit')], 'forfeit', 'stay'],
  ])('where %s', (_what, sessions, rung, move) => {
    expect(suggestRung(standingOn(sessions), [])).toEqual({ rung, move, heldBack: false });
  });

  it('holds an earned step back while a brake is on, and says so', () => {
    const standing = standingOn([on('watched'), on('watched')]);
    expect(suggestRung(standing, ['unslept'])).toEqual({ rung: 'watched', move: 'stay', heldBack: true });
    expect(highestRung(standing, ['unslept'])).toBe('watched');
    expect(highestRung(null, ['sore'])).toBe('logged');
  });
});

describe('the brakes', () => {
  it('are what was answered with yes', () => {
    expect(brakesOn({ sore: false, ill: false, unslept: false })).toEqual([]);
    expect(brakesOn({ sore: true, ill: false, unslept: true })).toEqual(['sore', 'unslept']);
    expect(brakesOn({ sore: true, ill: true, unslept: true })).toEqual(['sore', 'ill', 'unslept']);
  });
});

const rung = fc.constantFrom(...RUNGS);
const maybe = fc.constantFrom(true, false, null);
const session: fc.Arbitrary<LadderSession> = fc.record({
  rung,
  rose: maybe,
  held: maybe,
  hurt: fc.boolean(),
});
const sessions = fc.array(session, { maxLength: 12 });
const brakes = fc.subarray<Brake>(['sore', 'ill', 'unslept']);
const someBrake = fc.subarray<Brake>(['sore', 'ill', 'unslept'], { minLength: 1 });

describe('laws of the ladder, for any history', () => {
  it('never moves two steps', () => {
    fc.assert(
      fc.property(sessions, brakes, (history, braked) => {
        const standing = standingOn(history);
        const { rung: next, move } = suggestRung(standing, braked);
        const steps = stepsUp(standing?.rung ?? 'logged', next);
        expect(Math.abs(steps)).toBeLessThanOrEqual(1);
        expect(Math.sign(steps)).toBe({ first: 0, up: 1, stay: 0, down: -1 }[move]);
      }),
    );
  });

  it('never goes up with a brake on, and agrees to nothing above the latest session', () => {
    fc.assert(
      fc.property(sessions, someBrake, (history, braked) => {
        const standing = standingOn(history);
        const from = standing?.rung ?? 'logged';
        expect(stepsUp(from, suggestRung(standing, braked).rung)).toBeLessThanOrEqual(0);
        expect(stepsUp(from, highestRung(standing, braked))).toBeLessThanOrEqual(0);
      }),
    );
  });

  it('never goes up without two sessions in which nerves rose and the shot held', () => {
    fc.assert(
      fc.property(sessions, (history) => {
        const standing = standingOn(history);
        if (suggestRung(standing, []).move !== 'up') return;
        const good = history.filter(({ rose, held, hurt }) => rose === true && held === true && !hurt);
        expect(good.length).toBeGreaterThanOrEqual(GOOD_SESSIONS);
        expect(history[0]?.hurt).toBe(false);
      }),
    );
  });

  it('always goes down after a session that hurt, unless it is the lowest rung', () => {
    fc.assert(
      fc.property(sessions, rung, brakes, (history, last, braked) => {
        const standing = standingOn([on(last, { hurt: true }), ...history]);
        const steps = stepsUp(last, suggestRung(standing, braked).rung);
        expect(steps).toBe(last === 'logged' ? 0 : -1);
      }),
    );
  });

  it('lets everyone go as far down as they like', () => {
    fc.assert(
      fc.property(sessions, brakes, (history, braked) => {
        const standing = standingOn(history);
        expect(stepsUp('logged', highestRung(standing, braked))).toBeGreaterThanOrEqual(0);
        // Whoever steps down by themselves stands there, and is suggested no more than one step above.
        const chosen = standingOn([on('logged', COOL), ...history]);
        expect(chosen?.rung).toBe('logged');
        expect(stepsUp('logged', suggestRung(chosen, braked).rung)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('reads no further back than it needs', () => {
    let read = 0;
    function* endless(): Generator<LadderSession> {
      for (;;) {
        read += 1;
        yield on('watched');
      }
    }
    expect(standingOn(endless())).toMatchObject({ good: GOOD_SESSIONS });
    expect(read).toBe(GOOD_SESSIONS);
  });
});
