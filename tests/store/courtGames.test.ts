import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { gameOn, othersIn } from '../../renderer/games/gameOn.ts';
import { verdictOf } from '../../renderer/games/played.ts';
import type { Round } from '../../renderer/log/book.ts';
import { roundTally } from '../../renderer/log/roundCells.ts';
import type { GameFamily, GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { gameSetup, groupOf } from '../games/onCourt.ts';
import { SMALL_PLANS } from '../games/plans.ts';
import { beforeRound, evening, phase, settled, type Evening } from '../tools/evening.ts';
import { playOut, type Tapped } from '../tools/playOut.ts';

/* Games on court, from the first countdown to the verdict, as a simulated shooter plays them through the app's store. */

const FAMILIES = Object.keys(SMALL_PLANS) as GameFamily[];

const rounds = ({ gym }: Evening): Round[] => [...gym.store.getState().book.rounds.values()];
const taps = (tapped: readonly Tapped[], round: string) => tapped.filter((tap) => tap.round === round);
const entered = ({ entries }: Round) =>
  entries.map((entry) => (entry.kind === 'shot' ? entry.made : entry.kind));

describe('a game on court', () => {
  it.each(FAMILIES)('of %s is played to its end, and the record holds what was tapped', async (family) => {
    await fc.assert(
      fc.asyncProperty(SMALL_PLANS[family] as fc.Arbitrary<GamePlan>, fc.nat(9999), async (plan, seed) => {
        const night = await evening(beforeRound(gameSetup(plan, { seed, crowd: true })));
        const tapped = await playOut(night, rngFromSeed(seed), 0.6);
        const [round] = rounds(night);
        if (!round) throw new Error('a round that is over');
        expect(round).toMatchObject({ state: 'ended', ending: 'played-out' });
        expect(entered(round)).toEqual(tapped.map(({ made }) => made));
        expect(roundTally(round)).toEqual({
          makes: tapped.filter(({ made }) => made).length,
          attempts: tapped.length,
        });
        const end = gameOn(round);
        expect(end?.over).toBe(true);
        expect(verdictOf(round) === 'beaten').toBe(end?.won);
        expect(phase(night)).toBe('ready');
        // Nothing that sounds is left over.
        expect(night.sound.crowdCalls.at(-1)?.does).toBe('leave');
      }),
      { numRuns: 8 },
    );
  });

  it('tells its chance after every shot, which ends at nothing or at certainty', async () => {
    const plan: GamePlan = { family: 'lives', needed: 4, lives: 2 };
    const night = await evening(beforeRound(gameSetup(plan)));
    const chances: number[] = [];
    await playOut(night, rngFromSeed(1), 0.7, {
      before: (round) => {
        const outlook = night.court.outlook(round, []);
        expect(outlook?.time).toBe('no clock');
        chances.push(outlook?.chance ?? NaN);
      },
    });
    const [round] = rounds(night);
    expect(chances.length).toBe(round?.entries.length);
    expect(chances.every((chance) => chance > 0 && chance < 1)).toBe(true);
    const end = round && night.court.outlook(round, []);
    expect(end?.chance).toBeCloseTo(gameOn(round as Round)?.won ? 1 : 0, 12);
  });
});

describe('a game of several shooters on one court', () => {
  const SHOOTERS = ['ines', 'tobi', 'ada'];
  it.each(['shot', 'stop', 'game'] as const)(
    'whose turn passes after each %s: everyone’s record is their own',
    async (turns) => {
      await fc.assert(
        fc.asyncProperty(
          fc.oneof(SMALL_PLANS.lives, SMALL_PLANS.reach, SMALL_PLANS.streak, SMALL_PLANS.climb),
          fc.nat(9999),
          async (plan, seed) => {
            const night = await evening(groupOf(plan, turns, SHOOTERS).events);
            const tapped = await playOut(night, rngFromSeed(seed), 0.6);
            const book = night.gym.store.getState().book;
            expect([book.open, book.waiting.size, book.rounds.size, book.skipped]).toEqual([null, 0, 3, 0]);
            for (const round of rounds(night)) {
              expect(entered(round)).toEqual(taps(tapped, round.id).map(({ made }) => made));
              expect(round.ending).toBe('played-out');
              expect(gameOn(round, othersIn(book, round))?.over).toBe(true);
            }
          },
        ),
        { numRuns: 6 },
      );
    },
  );

  it('is a duel shot in turn, and over for both at once', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: -2, max: 2 }), fc.nat(9999), async (headStart, seed) => {
        const duel: GamePlan = { family: 'duel', against: { kind: 'shooter' }, headStart, extraPairs: 2 };
        const night = await evening(groupOf(duel, 'shot', ['ines', 'tobi']).events);
        const tapped = await playOut(night, rngFromSeed(seed), 0.5);
        expect(tapped.map(({ round }) => round)).toEqual(
          tapped.map((_, at) => (at % 2 === 0 ? 'round ines' : 'round tobi')),
        );
        const book = night.gym.store.getState().book;
        for (const round of rounds(night)) {
          expect(entered(round)).toEqual(taps(tapped, round.id).map(({ made }) => made));
        }
        const verdicts = rounds(night).map((round) => verdictOf(round, othersIn(book, round)));
        expect(new Set(verdicts)).toEqual(
          new Set(verdicts.includes('level') ? ['level'] : ['beaten', 'short']),
        );
      }),
      { numRuns: 10 },
    );
  });

  it('stays live where the turn passes after each shot, and asks the next one to get ready after a whole game', async () => {
    const lives: GamePlan = { family: 'lives', needed: 2, lives: 1 };
    const live = await evening(groupOf(lives, 'shot', SHOOTERS).events);
    await live.begin();
    live.court.shot(true, null);
    expect(phase(live)).toBe('live');
    expect(live.round().shooter).toBe('tobi');
    const games = await evening(groupOf(lives, 'game', SHOOTERS).events);
    await games.begin();
    games.court.shot(false, null);
    expect(phase(games)).toBe('ready');
    expect(games.court.store.getState().round).toBe('round tobi');
    await settled();
    expect(phase(games)).toBe('ready');
    games.court.shot(true, null);
    expect(games.round().entries).toEqual([]);
  });

  it('takes back the last shot across turns, and the one who took it is on court again', async () => {
    const night = await evening(groupOf({ family: 'lives', needed: 3, lives: 2 }, 'shot', SHOOTERS).events);
    await night.begin();
    for (const made of [true, false, true, true]) night.court.shot(made, null);
    expect(night.round().shooter).toBe('tobi');
    for (const who of ['ines', 'ada', 'tobi', 'ines']) {
      await night.court.undo(night.round());
      expect(night.round().shooter).toBe(who);
      expect(phase(night)).toBe('live');
    }
    expect(night.gym.store.getState().book.skipped).toBe(0);
    expect(night.round().entries).toEqual([]);
  });

  it('brings the one before back to court where a whole game is taken back', async () => {
    const night = await evening(groupOf({ family: 'lives', needed: 2, lives: 1 }, 'game', SHOOTERS).events);
    await night.begin();
    night.court.shot(false, null);
    await settled();
    expect(night.round().shooter).toBe('tobi');
    await night.court.undo(night.round());
    expect(night.round()).toMatchObject({ shooter: 'ines', entries: [] });
    expect(phase(night)).toBe('ready');
    await night.begin();
    expect(phase(night)).toBe('live');
    expect(night.round().state).toBe('playing');
  });

  it('calls the countdown off where it was for somebody else', async () => {
    const night = await evening(groupOf({ family: 'lives', needed: 2, lives: 1 }, 'game', SHOOTERS).events);
    await night.begin();
    night.court.shot(false, null);
    await settled();
    await night.court.go();
    expect(phase(night)).toBe('countdown');
    await night.court.undo(night.round());
    expect(night.round().shooter).toBe('ines');
    await night.pass(30);
    expect(phase(night)).toBe('ready');
  });

  it('gives everyone a clock of their own where each plays a whole game', async () => {
    const clock = { kind: 'round', seconds: 20 } as const;
    const night = await evening(groupOf({ family: 'reach', needed: 2 }, 'game', SHOOTERS, { clock }).events);
    for (const who of SHOOTERS) {
      expect(night.round().shooter).toBe(who);
      await night.begin();
      night.court.shot(true, null);
      await night.pass(21);
      expect(phase(night)).toBe('buzzer');
      night.court.nothingInTheAir();
      await settled();
    }
    expect(rounds(night).map(({ ending, entries }) => [ending, entries.length])).toEqual(
      SHOOTERS.map(() => ['time-up', 1]),
    );
  });

  it('can be left by all: the shots count, the game does not', async () => {
    const night = await evening(groupOf({ family: 'lives', needed: 3, lives: 2 }, 'shot', SHOOTERS).events);
    await night.begin();
    for (const made of [true, false, true, true]) night.court.shot(made, null);
    await night.pass(0);
    night.court.leave('asked');
    expect(await night.court.end('stopped')).toBe(true);
    const left = SHOOTERS.map((who) => rounds(night).find(({ shooter }) => shooter === who) as Round);
    expect(left.map((round) => [verdictOf(round), roundTally(round).attempts])).toEqual([
      ['stopped', 2],
      ['stopped', 1],
      ['stopped', 1],
    ]);
  });
});
