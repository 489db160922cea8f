import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { ClimbState } from '../../renderer/games/climb.ts';
import type { DuelState } from '../../renderer/games/duel.ts';
import { faceOf, type Face } from '../../renderer/games/face.ts';
import { gameOn, othersIn, type GameOn } from '../../renderer/games/gameOn.ts';
import type { GameFace } from '../../renderer/games/gameFace.ts';
import type { LivesState } from '../../renderer/games/lives.ts';
import type { RaceState } from '../../renderer/games/race.ts';
import type { RacksState } from '../../renderer/games/racks.ts';
import type { ReachState } from '../../renderer/games/reach.ts';
import { worthOf } from '../../renderer/games/ruleOf.ts';
import type { StreakState } from '../../renderer/games/streak.ts';
import type { TripsState } from '../../renderer/games/trips.ts';
import type { Round } from '../../renderer/log/book.ts';
import { attemptsOn } from '../../renderer/court/cards.ts';
import type { GameFamily, GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { onCourt } from '../log/diary.ts';
import { gameSetup, groupOf, shoot } from './onCourt.ts';
import { SMALL_CARD, SMALL_PLANS } from './plans.ts';

const shots = fc.array(fc.boolean(), { maxLength: 16 });
const sum = (numbers: readonly number[]) => numbers.reduce((total, one) => total + one, 0);

interface Seen {
  readonly face: Face;
  readonly on: GameOn;
  readonly round: Round;
  /** The shooter's own shots, in order. */
  readonly own: readonly boolean[];
}

/** The face of a game after every shot of it, the first one before any. */
function faces(plan: GamePlan, tapped: readonly boolean[], seed = 7): Seen[] {
  const log = onCourt(gameSetup(plan, { seed }));
  const seen: Seen[] = [];
  for (let shot = 0; ; shot += 1) {
    const book = log.book();
    const round = book.open ?? book.rounds.get('round 1');
    const face = round && faceOf(round);
    const on = round && gameOn(round);
    if (!round || !face || !on) throw new Error('a round with a game');
    seen.push({ face, on, round, own: tapped.slice(0, shot) });
    const next = tapped[shot];
    if (next === undefined || !book.open) return seen;
    shoot(log, next);
  }
}

/** Holds after every shot of any game of a family. */
function holds<F extends GameFamily>(
  family: F,
  law: (game: Extract<GameFace, { family: F }>, seen: Seen, plan: Extract<GamePlan, { family: F }>) => void,
): void {
  fc.assert(
    fc.property(SMALL_PLANS[family] as fc.Arbitrary<GamePlan>, shots, fc.nat(99), (plan, tapped, seed) => {
      for (const seen of faces(plan, tapped, seed)) {
        const { game } = seen.face;
        expect(game.family).toBe(family);
        law(game as Extract<GameFace, { family: F }>, seen, plan as Extract<GamePlan, { family: F }>);
      }
    }),
    { numRuns: 60 },
  );
}

describe('the face of a game', () => {
  it.each(['reach', 'last shot'] as const)('of %s: needed and left as the rule counts them', (family) => {
    holds(family, (game, { on, face }, plan) => {
      const { taken, makes } = on.state as ReachState;
      expect(game).toMatchObject({ made: makes, left: attemptsOn(SMALL_CARD) - taken, goal: plan.needed });
      expect(game.needed).toBe(Math.max(0, plan.needed - makes));
      expect(game.needed === 0).toBe(face.won);
      expect(game.left === 0).toBe(face.over);
    });
  });
  it('of last shot: tells the clock of the next shot, a tenth between both ends', () => {
    holds('last shot', ({ start, left }, _, { from, to }) => {
      expect(start === null).toBe(left === 0);
      const tenths = (start ?? from) * 10;
      expect(tenths).toBeGreaterThanOrEqual(10 * from);
      expect(tenths).toBeLessThanOrEqual(10 * to);
      expect(tenths).toBeCloseTo(Math.round(tenths), 9);
    });
  });
  it('of streak: in a row now, the best run, and what is left', () => {
    holds('streak', (game, { on, face, own }, plan) => {
      const { row, taken } = on.state as StreakState;
      expect(game).toMatchObject({ row, goal: plan.row, left: plan.most - taken });
      const runs = own
        .map((made) => (made ? '●' : ' '))
        .join('')
        .split(' ');
      expect(game.best).toBe(Math.max(...runs.map(({ length }) => length)));
      expect(game.best >= game.goal).toBe(face.won);
    });
  });
  it('of race: the score, where it is won, and what is left', () => {
    holds('race', (game, { on, face }, plan) => {
      const { score, taken } = on.state as RaceState;
      expect(game).toMatchObject({ score, goal: plan.to, lost: plan.lost, left: plan.most - taken });
      expect(game.score >= game.goal).toBe(face.won);
    });
  });
  it('of lives: makes, and lives that are left', () => {
    holds('lives', (game, { on, face, own }, plan) => {
      const { makes, misses } = on.state as LivesState;
      expect(game).toMatchObject({
        made: makes,
        goal: plan.needed,
        lives: plan.lives - misses,
        of: plan.lives,
      });
      expect(own.filter((made) => !made)).toHaveLength(misses);
      expect(game.needed === 0 || game.lives === 0).toBe(face.over);
      expect(game.needed === 0).toBe(face.won);
    });
  });
  it('of trips: the trip, its shot, the points and the scene', () => {
    holds('trips', (game, { on, face, own }, plan) => {
      const { trip, taken, points } = on.state as TripsState;
      expect(game).toMatchObject({ points, goal: plan.needed, of: plan.trips });
      expect(game.points).toBe(own.filter(Boolean).length);
      expect(game.needed === 0).toBe(face.won);
      expect([game.trip, game.shot]).toEqual(face.over ? [plan.trips, 1] : [trip + 1, taken + 1]);
      expect(game.shot).toBeLessThanOrEqual(game.shots);
      const inTrip = own.slice(own.length - taken).filter(Boolean).length;
      expect(game.scene).toEqual(plan.scene && { margin: inTrip - 1, left: 3 });
    });
  });
  it('of racks: the rack, the ball and what it is worth, as the rule pays it', () => {
    holds('racks', (game, { on, face, round, own }, plan) => {
      const { taken, points } = on.state as RacksState;
      const worth = worthOf(SMALL_CARD, plan.double, round.pressure?.seed ?? 0);
      expect(game).toMatchObject({ points, goal: plan.needed, worth: worth[taken] ?? 0, of: 2 });
      expect(game.points).toBe(sum(own.map((made, at) => (made ? (worth[at] ?? 0) : 0))));
      expect(game.points + game.left).toBeLessThanOrEqual(sum(worth));
      const next = Math.min(taken, 4);
      expect(face.over).toBe(taken === 5);
      expect([game.rack, game.ball, game.balls]).toEqual(next < 2 ? [1, next + 1, 2] : [2, next - 1, 3]);
    });
  });
  it('of climb: the step, and what is made and left on it', () => {
    holds('climb', (game, { on, face }, plan) => {
      const { step, taken, made, all } = on.state as ClimbState;
      expect(game.top).toBe(face.won);
      expect(game.left).toBe(plan.most - all);
      expect(game).toMatchObject(
        game.top
          ? { step: 2, of: 2, made: plan.makes[1], goal: plan.makes[1], stepLeft: 0 }
          : {
              step: step + 1,
              of: 2,
              made,
              goal: plan.makes[step],
              stepLeft: (SMALL_CARD[step]?.attempts ?? 0) - taken,
            },
      );
    });
  });
  it('of duel: both sides, whose shot it is, and who is ahead', () => {
    holds('duel', (game, { on, face, own }, plan) => {
      const { taken, ahead } = on.state as DuelState;
      const [first, second] = game.sides;
      expect(game.own).toBe(0);
      expect(game.ahead).toBe(ahead);
      expect(first.score - second.score).toBe(ahead);
      expect(first.shots.length + second.shots.length).toBe(taken);
      expect(first.makes).toBe(own.slice(0, first.shots.length).filter(Boolean).length);
      expect(first.headStart - second.headStart).toBe(plan.headStart);
      expect(game.turn === null).toBe(face.over);
      // Extra pairs come when both have shot the card, and not before.
      expect(game.extra === null || second.left === 0).toBe(true);
      expect(game.turn === null || second.left > 0 || game.extra !== null).toBe(true);
    });
  });
});

describe('which shot comes next', () => {
  const families = Object.keys(SMALL_PLANS) as GameFamily[];
  it.each(families)('of %s is one more than was shot, and never beyond the most there can be', (family) => {
    holds(family, (_, { face, own, on }) => {
      expect(face.shots.next).toBe(own.length + 1);
      expect(face.shots.next).toBeLessThanOrEqual(face.shots.most + (face.over ? 1 : 0));
      expect(face.over).toBe(on.over);
      expect(!(face.shots.fixed && face.over) || own.length === face.shots.most).toBe(true);
    });
  });
  it.each(families)('of %s lies among shots that belong together', (family) => {
    holds(family, (_, { face: { near, over }, own }) => {
      expect(near.taken).toBeLessThanOrEqual(own.length);
      expect(near.toCome === 0).toBe(over);
    });
  });
});

describe('a game of two shooters', () => {
  const DUEL: GamePlan = { family: 'duel', against: { kind: 'shooter' }, headStart: -1, extraPairs: 2 };
  it('has one score, seen from either side', () => {
    fc.assert(
      fc.property(shots, (tapped) => {
        const log = groupOf(DUEL, 'shot', ['ines', 'tobi']);
        for (const made of tapped) {
          const { open } = log.book();
          if (!open) break;
          const others = othersIn(log.book(), open);
          const [other] = others;
          if (!other) throw new Error('two shooters');
          const [mine, theirs] = [faceOf(open, others)?.game, faceOf(other, [open])?.game];
          if (mine?.family !== 'duel' || theirs?.family !== 'duel') throw new Error('a duel');
          expect(mine.sides).toEqual(theirs.sides);
          expect(mine.own + theirs.own).toBe(1);
          expect(mine.ahead).toBe(0 - theirs.ahead);
          expect(mine.turn).toBe(mine.own);
          expect(mine.sides[1].headStart).toBe(1);
          shoot(log, made);
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('a round without a game', () => {
  it('has no face', () => {
    const { open } = onCourt().book();
    expect(open && faceOf(open)).toBeNull();
  });
});
