import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Stop } from '../../renderer/court/cards.ts';
import { gameFault, MOST_GAME_SHOTS } from '../../renderer/games/gameFault.ts';
import { ruleOf } from '../../renderer/games/ruleOf.ts';
import { solve } from '../../renderer/games/solver.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { anyCard, anyPlan } from './anyPlan.ts';

const WING: readonly Stop[] = [{ spot: 'left-wing', shot: 'catch', attempts: 10 }];
const LINE: readonly Stop[] = [{ spot: 'free-throw', shot: 'free-throw', attempts: 10 }];
const race = (change: object): GamePlan => ({
  family: 'race',
  to: 5,
  up: 1,
  down: 1,
  floor: null,
  lost: null,
  most: 20,
  ...change,
});
const duel = (change: object): GamePlan => ({
  family: 'duel',
  against: { kind: 'drawn', rate: 0.5 },
  headStart: 0,
  extraPairs: 3,
  ...change,
});

describe('a game that cannot be played is refused in a plain sentence', () => {
  it.each<readonly [GamePlan, readonly Stop[], RegExp]>([
    [{ family: 'reach', needed: 11 }, WING, /only 10 shots, so 11 cannot be reached\. Ask for 10 or fewer/],
    [{ family: 'reach', needed: 0 }, WING, /won before it begins/],
    [{ family: 'reach', needed: 1 }, [], /at least one shot/],
    [{ family: 'streak', row: 9, most: 8 }, WING, /run of 9 does not fit into 8 shots/],
    [{ family: 'streak', row: 5, most: 500 }, WING, /could take 500 shots\. Keep it to 200/],
    [race({ to: 21 }), WING, /In 20 shots at most 20 points can be made, so 21 cannot be reached/],
    [race({ floor: 1 }), WING, /cannot be held above that/],
    [race({ lost: 0 }), WING, /only be lost below/],
    [race({ floor: -2, lost: -2 }), WING, /never falls below -2, so the game cannot be lost at -2/],
    [{ family: 'lives', needed: 5, lives: 0 }, WING, /at least one life/],
    [{ family: 'trips', kind: 'two shots', trips: 1, needed: 1, scene: null }, WING, /need free throws/],
    [
      { family: 'trips', kind: 'three shots', trips: 2, needed: 7, scene: null },
      LINE,
      /only 6 points on these/,
    ],
    [
      { family: 'trips', kind: 'one-and-one', trips: 31, needed: 7, scene: null },
      LINE,
      /30 trips to the line/,
    ],
    [{ family: 'racks', double: 'last', needed: 12 }, WING, /only 11 points from these racks/],
    // The coin may leave every ball at one point.
    [{ family: 'racks', double: 'coin', needed: 11 }, WING, /only 10 points from these racks/],
    [{ family: 'last shot', needed: 1, from: 5, to: 2 }, WING, /shorter time first/],
    [{ family: 'last shot', needed: 1, from: 0, to: 2 }, WING, /at least one second/],
    [{ family: 'climb', makes: [11], back: 1, most: 20 }, WING, /Step 1 has 10 shots and asks for 11/],
    [{ family: 'climb', makes: [6], back: 1, most: 5 }, WING, /the top takes 6 shots/],
    [duel({ headStart: 11 }), WING, /Nobody can catch up 11 in 10 shots/],
    [duel({ headStart: -10, extraPairs: 0 }), WING, /cannot be beaten/],
    [duel({ against: { kind: 'drawn', rate: 1 } }), WING, /cannot be beaten/],
    [
      duel({ against: { kind: 'own round', round: 'old', made: [true] }, extraPairs: 1 }),
      WING,
      /no shots beyond its last/,
    ],
  ])('%j', (plan, card, words) => {
    expect(gameFault(plan, card)).toMatch(words);
  });

  it('a climb too large to be worked out', () => {
    const steps = Array.from({ length: 8 }, (): Stop => ({ spot: 'top', shot: 'catch', attempts: 60 }));
    const plan: GamePlan = { family: 'climb', makes: steps.map(() => 1), back: 1, most: 200 };
    expect(gameFault(plan, steps)).toMatch(/too long to be worked out/);
  });
});

describe('any game whatever', () => {
  it('is refused, or can be played by the toss of any coin, be won, and ends in time', () => {
    fc.assert(
      fc.property(anyPlan, anyCard, fc.nat(), (plan, card, seed) => {
        if (gameFault(plan, card) !== null) return;
        const { rule, stops } = ruleOf(plan, card, seed);
        const half = stops.length / 2;
        const theirs = (shot: number): number => {
          if (plan.family !== 'duel' || shot < half || plan.against.kind === 'shooter') return 0.5;
          if (plan.against.kind === 'drawn') return plan.against.rate;
          return plan.against.made[shot - half] ? 1 : 0;
        };
        const own = solve(rule, { weights: [1], rates: [stops.map((_, shot) => theirs(shot))] });
        expect(own.standing([]).chance).toBeGreaterThan(0);
        const most = own.length([]).most;
        expect(plan.family === 'duel' ? most / 2 : most).toBeLessThanOrEqual(MOST_GAME_SHOTS);
      }),
      { numRuns: 300 },
    );
  });

  it('that no rule would take is refused here with a sentence of its own', () => {
    fc.assert(
      fc.property(anyPlan, anyCard, (plan, card) => {
        const fault = gameFault(plan, card);
        expect(fault ?? '').not.toMatch(/does not work out/);
        // What is not refused here, no rule throws at.
        if (fault === null) ruleOf(plan, card, 0);
      }),
      { numRuns: 500 },
    );
  });
});
