import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { addDays } from '../../renderer/basics/days.ts';
import { reach } from '../../renderer/games/reach.ts';
import { solve } from '../../renderer/games/solver.ts';
import { type Pace, paceOf, timeFor } from '../../renderer/stats/pace.ts';
import { roundMean, shotTime, simulatedRounds, timedRound, type Tempo } from './timedRounds.ts';

const ON = '2026-06-01';
const steady = (seconds: number, shots = 24) => Array.from({ length: shots }, () => seconds);

describe('the pace of a shooter', () => {
  it('is the usual one where nothing is known, and says so', () => {
    const { overall, relaxed, pressured, onClock } = paceOf([], ON);
    expect(overall).toMatchObject({ shots: 0, own: false });
    // The median is 7 s, the mean of so wide a spread above it.
    expect(overall.seconds).toBeGreaterThan(7);
    expect(overall.seconds).toBeLessThan(9);
    expect(overall.doubt / overall.seconds).toBeGreaterThan(0.5);
    for (const kind of [relaxed, pressured, onClock]) expect(kind).toMatchObject({ shots: 0, own: false });
  });
  it('is the shooter’s own from twenty shots on', () => {
    const nineteen = paceOf([timedRound(steady(4, 19))], ON).overall;
    const twenty = paceOf([timedRound(steady(4, 20))], ON).overall;
    expect([nineteen.own, twenty.own]).toEqual([false, true]);
    expect(twenty.shots).toBe(20);
    expect(twenty.seconds).toBeLessThan(4.8);
  });
  it('comes to the shooter’s own time with many rounds', () => {
    const rounds = Array.from({ length: 40 }, () => timedRound([4, 5, 6, 5, 4, 6, 5, 5, 5]));
    const { overall } = paceOf(rounds, ON);
    expect(overall.seconds).toBeCloseTo(5, 1);
    expect(overall.doubt).toBeLessThan(0.5);
    // √(4/8) s is the spread of these nine, of which the round's mean takes one; the usual spread still weighs a little.
    expect(overall.spread).toBeGreaterThan(Math.sqrt(4 / 8));
    expect(overall.spread).toBeLessThan(Math.sqrt(4 / 8) + 0.1);
  });
  it('is told apart by condition, and each leans on the rest where its own rounds are few', () => {
    const relaxed = Array.from({ length: 12 }, () => timedRound(steady(9)));
    const pressured = Array.from({ length: 12 }, () => timedRound(steady(5), { condition: 'pressured' }));
    const both = paceOf([...relaxed, ...pressured], ON);
    expect(both.relaxed.seconds).toBeCloseTo(9, 0);
    expect(both.pressured.seconds).toBeCloseTo(5, 0);
    expect(both.overall.seconds).toBeGreaterThan(6);
    expect(both.overall.seconds).toBeLessThan(8);
    expect(both.onClock.own).toBe(false);

    const alone = paceOf(relaxed, ON);
    expect(alone.pressured).toMatchObject({ shots: 0, own: false });
    expect(alone.pressured.seconds).toBeCloseTo(9, -1);
    expect(alone.pressured.doubt).toBeGreaterThan(2 * alone.relaxed.doubt);
    const one = paceOf([...relaxed, timedRound(steady(5, 10), { condition: 'pressured' })], ON).pressured;
    expect(one.seconds).toBeGreaterThan(5);
    expect(one.seconds).toBeLessThan(alone.pressured.seconds);
  });
  it('has a figure of its own for rounds on a round clock, not on a shot clock', () => {
    const rounds = [
      ...Array.from({ length: 9 }, () => timedRound(steady(8), { condition: 'pressured', clock: 'shot' })),
      ...Array.from({ length: 9 }, () => timedRound(steady(4), { condition: 'pressured', clock: 'round' })),
    ];
    const { onClock } = paceOf(rounds, ON);
    expect(onClock.shots).toBe(9 * 24);
    expect(onClock.seconds).toBeCloseTo(4, 0);
  });
  it('goes by the latest: old rounds fade, older than half a year and later ones do not count', () => {
    const now = Array.from({ length: 4 }, () => timedRound(steady(4), { date: addDays(ON, -3) }));
    const then = Array.from({ length: 4 }, () => timedRound(steady(10), { date: addDays(ON, -120) }));
    const { overall } = paceOf([...then, ...now], ON);
    const swapped = paceOf(
      [...then, ...now].map((round) => ({
        ...round,
        date: round.date === addDays(ON, -3) ? addDays(ON, -120) : addDays(ON, -3),
      })),
      ON,
    ).overall;
    expect(overall.seconds).toBeLessThan(swapped.seconds - 2);
    const far = [
      timedRound(steady(3), { date: addDays(ON, -190) }),
      timedRound(steady(3), { date: addDays(ON, 1) }),
    ];
    expect(paceOf([...now, ...far], ON)).toEqual(paceOf(now, ON));
    // A break of four months leaves something, but not enough to call it the shooter's own.
    expect(paceOf([timedRound(steady(4, 100), { date: addDays(ON, -120) })], ON).overall.own).toBe(false);
  });
  it('does not depend on the order of the rounds', () => {
    const rng = rngFromSeed(5);
    const rounds = simulatedRounds(6, { mean: 2, between: 0.2, cv: 0.3 }, rng);
    const there = paceOf(rounds, ON).overall;
    const back = paceOf(rounds.toReversed(), ON).overall;
    expect(back.seconds).toBeCloseTo(there.seconds, 9);
    expect(back.doubt).toBeCloseTo(there.doubt, 9);
    expect(back.spread).toBeCloseTo(there.spread, 9);
  });
  it('reads a little too fast on a clock, which cuts the last shot off', () => {
    const rng = rngFromSeed(3);
    const tempo: Tempo = { mean: Math.log(7), between: 0.1, cv: 0.35 };
    const seconds = Array.from({ length: 200 }, () => {
      const rounds = Array.from({ length: 10 }, () => {
        const mean = roundMean(tempo, rng);
        const gaps: number[] = [];
        for (let at = 3; at - 1 < 60;) {
          const gap = shotTime(mean, tempo, rng);
          at += gap;
          if (at - 1 < 60) gaps.push(gap);
        }
        return timedRound(gaps, { condition: 'pressured', clock: 'round' });
      });
      return paceOf(rounds, ON).onClock.seconds;
    });
    const off = seconds.reduce((sum, one) => sum + one, 0) / seconds.length / 7 - 1;
    expect(off).toBeLessThan(0);
    expect(off).toBeGreaterThan(-0.05);
  });
});

const PACE: Pace = { seconds: 7, spread: 2.5, doubt: 1.2, shots: 100, own: true };

/** Chance that there is still time for each turn, seen from now. */
function reaching(chances: readonly number[]): number[] {
  let product = 1;
  return chances.map((chance) => (product *= chance));
}

describe('time for the next turns', () => {
  const paces = fc.record({
    seconds: fc.double({ min: 1, max: 40, noNaN: true }),
    spread: fc.double({ min: 0.05, max: 30, noNaN: true }),
    doubt: fc.double({ min: 0.05, max: 30, noNaN: true }),
    shots: fc.constant(0),
    own: fc.boolean(),
  });
  const from = fc.constantFrom('start' as const, 'shot' as const);

  it('is a chance for each turn, and more time is never worse', () => {
    const time = fc.double({ min: 0, max: 600, noNaN: true });
    fc.assert(
      fc.property(paces, time, time, from, (pace, one, other, where) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        const few = timeFor(pace, less, 30, where);
        const many = reaching(timeFor(pace, more, 30, where));
        expect(few).toHaveLength(30);
        for (const chance of few) {
          expect(chance).toBeGreaterThanOrEqual(0);
          expect(chance).toBeLessThanOrEqual(1);
        }
        for (const [turn, reached] of reaching(few).entries()) {
          expect(reached).toBeLessThanOrEqual((many[turn] ?? NaN) + 1e-9);
        }
      }),
    );
  });
  it('is nothing after the buzzer and certain with hours left', () => {
    expect(timeFor(PACE, 0, 3)).toEqual([0, 0, 0]);
    expect(timeFor(PACE, -2, 2, 'start')).toEqual([0, 0]);
    for (const chance of timeFor(PACE, 7200, 25)) expect(chance).toBeCloseTo(1, 9);
    expect(timeFor(PACE, 60, 0)).toEqual([]);
  });
  it('counts a ball that leaves the hand before the buzzer, not one that is noted before it', () => {
    const exact: Pace = { ...PACE, spread: 0.01, doubt: 0.01 };
    // Noted after 7, 14, 21 s; released one second before.
    expect(reaching(timeFor(exact, 20.5, 4)).map(Math.round)).toEqual([1, 1, 1, 0]);
    expect(reaching(timeFor(exact, 19.5, 4)).map(Math.round)).toEqual([1, 1, 0, 0]);
    // From the start with the ball in hand: released after 2, 9, 16, 23 s, give or take one.
    expect(reaching(timeFor(exact, 19.5, 4, 'start')).map(Math.round)).toEqual([1, 1, 1, 0]);
  });
  it('is wider where the pace is not known', () => {
    const sure = reaching(timeFor({ ...PACE, doubt: 0.2 }, 60, 12));
    const unsure = reaching(timeFor({ ...PACE, doubt: 3 }, 60, 12));
    expect(unsure[5]).toBeLessThan(sure[5] ?? NaN);
    expect(unsure[11]).toBeGreaterThan(sure[11] ?? NaN);
  });

  // Log-normal shots around a log-normal mean with the same means and variances: the gamma is an approximation.
  it.each([
    ['shot', 10],
    ['shot', 24],
    ['shot', 60],
    ['shot', 150],
    ['start', 24],
    ['start', 60],
    ['start', 150],
  ] as const)('from the %s with %d s left it is what simulation gives, within 2 points', (where, left) => {
    const rng = rngFromSeed(9);
    const tempo: Tempo = {
      mean: Math.log(7) - Math.log1p((1.2 / 7) ** 2) / 2,
      between: Math.sqrt(Math.log1p((1.2 / 7) ** 2)),
      cv: 2.5 / 7,
    };
    const rounds = 20_000;
    const counts = Array.from({ length: 40 }, () => 0);
    for (let round = 0; round < rounds; round += 1) {
      const mean = roundMean(tempo, rng);
      let release = where === 'start' ? Math.max(0.3, 2 + rng.normal()) : shotTime(mean, tempo, rng) - 1;
      for (let turn = 0; release < left; turn += 1) {
        counts[turn] = (counts[turn] ?? 0) + 1;
        release += shotTime(mean, tempo, rng);
      }
    }
    for (const [turn, reached] of reaching(timeFor(PACE, left, 40, where)).entries()) {
      expect(Math.abs(reached - (counts[turn] ?? 0) / rounds)).toBeLessThan(0.02);
    }
  });

  it('fits the solver: the clock takes part of the chance, and is placed by turns of the game', () => {
    const rule = reach(6, 10);
    const ability = { weights: [1], rates: [Array.from({ length: 10 }, () => 0.55)] };
    const free = solve(rule, ability).standing([]).chance;
    const hurried = solve(rule, ability, timeFor(PACE, 55, rule.longest, 'start')).standing([]).chance;
    expect(hurried).toBeLessThan(0.75 * free);
    const taken = ['make', 'miss', 'make'] as const;
    const time = [...taken.map(() => 1), ...timeFor(PACE, 30, rule.longest - taken.length)];
    const then = solve(rule, ability, time).standing(taken);
    expect(then.chance).toBeLessThan(solve(rule, ability).standing(taken).chance);
    const enough = [...taken.map(() => 1), ...timeFor(PACE, 1200, rule.longest - taken.length)];
    expect(solve(rule, ability, enough).standing(taken).chance).toBeCloseTo(
      solve(rule, ability).standing(taken).chance,
      9,
    );
  });
});

/*
 * Simulated shooters of known truth: how often is there time for a turn when the chance was said to be so and so? The
 * rival is the plain rule, time left by the mean time of a shot.
 */
describe('forecasts of how far a minute reaches, from a few rounds', () => {
  it.each([
    ['rounds alike', 0.06, { between: 0.15, cv: 0.35 }],
    ['rounds that differ', 0.06, { between: 0.25, cv: 0.35 }],
    ['balls that roll away', 0.06, { between: 0.15, cv: 0.25, rollsAway: true }],
    ['stops that no one logged', 0.1, { between: 0.15, cv: 0.35, stops: 0.03 }],
  ])('%s', (_name, off, kind) => {
    const rng = rngFromSeed(17);
    const bins = Array.from({ length: 5 }, () => ({ said: 0, came: 0, n: 0 }));
    let [ours, plain] = [0, 0];
    for (let shooter = 0; shooter < 1200; shooter += 1) {
      const tempo: Tempo = { mean: Math.log(7) + 0.4 * rng.normal(), ...kind };
      const { relaxed } = paceOf(simulatedRounds(8, tempo, rng), ON);
      const chances = reaching(timeFor(relaxed, 60, 40));
      const mean = roundMean(tempo, rng);
      let release = -1;
      for (const [turn, said] of chances.entries()) {
        release += shotTime(mean, { ...tempo, stops: 0 }, rng);
        if (said < 0.002 || said > 0.998) continue;
        const came = release < 60 ? 1 : 0;
        ours += (said - came) ** 2;
        plain += ((turn + 1 <= 61 / relaxed.seconds ? 1 : 0) - came) ** 2;
        const bin = bins[Math.min(4, Math.floor(5 * said))];
        if (!bin) continue;
        bin.said += said;
        bin.came += came;
        bin.n += 1;
      }
    }
    // Turns of one round hang together, so a bin is worth some 600 rounds: two standard errors are 4 points.
    for (const { said, came, n } of bins) expect(Math.abs(said - came) / n).toBeLessThan(off);
    expect(ours).toBeLessThan(0.8 * plain);
  });
});
