import { describe, expect, it } from 'vitest';

import { present } from '../../renderer/basics/invariant.ts';
import { othersIn } from '../../renderer/games/gameOn.ts';
import type { Book, Round } from '../../renderer/log/book.ts';
import type { GroupTurns } from '../../renderer/log/events.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { gamePrices } from '../../renderer/store/gamePrices.ts';
import { courtGames } from '../../renderer/store/courtGames.ts';
import { roundGame, solvedGame, solvedNow, standingOf } from '../../renderer/store/liveChance.ts';
import { gameSetup, groupOf, shoot } from '../games/onCourt.ts';
import { diary, INES, started, type Diary } from '../log/diary.ts';

/* The chance on court, with the time there is for it. */

const FREE_THROWS = [{ spot: 'free-throw', shot: 'free-throw', attempts: 20 }] as const;
const REACH: GamePlan = { family: 'reach', needed: 12 };
const CLOCK = { kind: 'round', seconds: 120 } as const;

/** Facts that come so many seconds after the last. */
function later(log: Diary, seconds: number): void {
  // The diary's clock moves a second with every event: quiet events move it on.
  for (let at = 0; at < seconds - 1; at += 1) log.write('StakeReopened', { round: 'nothing' });
}

/** Ines with some rounds behind her, a shot every so many seconds, before a game against the clock. */
function before(game: GamePlan, pace: number, earlier = 3): Diary {
  const log = diary();
  log.write('ShooterAdded', INES);
  log.write('SessionStarted', { session: 'visit 1', shooter: 'ines', date: '2026-11-25' });
  const card = { id: 'line', name: 'Twenty', stops: [...FREE_THROWS] };
  for (let n = 0; n < earlier; n += 1) {
    const round = `earlier ${n}`;
    log.write('RoundStarted', { ...started({ round }), card });
    for (let shot = 0; shot < 20; shot += 1) {
      later(log, pace);
      log.write('ShotTaken', { round, stop: 0, made: shot % 3 !== 0, side: null });
    }
    log.write('RoundEnded', { round, why: 'played-out', clockLeft: null });
  }
  log.write('RoundStarted', { ...started(), ...gameSetup(game, { card: FREE_THROWS, clock: CLOCK }) });
  return log;
}

const open = (book: Book): Round => present(book.open, 'a round on court');
const outlook = (log: Diary) => courtGames(() => log.book()).outlook(open(log.book()), []);
const chance = (log: Diary): number => outlook(log)?.chance ?? NaN;
const shot = (log: Diary, made: boolean, clockLeft: number) =>
  log.write('ShotTaken', { round: 'round 1', stop: 0, made, side: null, clockLeft });

describe('the chance against the clock', () => {
  it('goes by the shooter’s own pace: who is slow has less time', () => {
    // Twenty shots at four seconds take 80 of the 120, at twelve 240.
    const [quick, slow] = [before(REACH, 4), before(REACH, 12)];
    expect(outlook(quick)?.time).toBe('own pace');
    expect(chance(quick)).toBeGreaterThan(chance(slow) + 0.3);
  });
  it('goes by a usual pace where the shooter’s own is not known, and says so', () => {
    const log = before(REACH, 4, 0);
    expect(outlook(log)?.time).toBe('usual pace');
    const setup = present(open(log.book()).pressure, 'a pressured round');
    const calm = { ...open(log.book()), pressure: { ...setup, clock: null } };
    const enough = standingOf(present(solvedGame(log.book(), calm), 'a game'), calm).chance;
    expect(chance(log)).toBeLessThan(enough - 0.05);
  });
  it('is the one the game was set up with', () => {
    for (const log of [before(REACH, 6), before(REACH, 6, 0)]) {
      const round = open(log.book());
      const prices = gamePrices(log.book(), 'ines', { at: round.startedAt, zone: 60 });
      const price = prices.price({ plan: REACH, stops: FREE_THROWS, clock: CLOCK }, 7);
      expect(chance(log)).toBeCloseTo(price.chance, 9);
      expect(outlook(log)?.time).toBe(price.inTime?.pace.own ? 'own pace' : 'usual pace');
    }
  });
  it('of a mark leaves time aside where the shooter’s own pace is not known, as it was set', () => {
    const marked = (earlier: number) => {
      const log = before(REACH, 4, earlier);
      const round = open(log.book());
      const setup = present(round.pressure, 'a pressured round');
      const mark = { makes: 12, chance: 0.5 };
      return courtGames(() => log.book()).outlook({ ...round, pressure: { ...setup, game: null, mark } }, []);
    };
    expect(marked(0)?.time).toBe('aside');
    expect(marked(3)?.time).toBe('own pace');
  });
  it('of a group knows of time where each has a clock alone', () => {
    const time = (turns: GroupTurns) => {
      const book = groupOf(REACH, turns, ['ines', 'tobi'], { card: FREE_THROWS, clock: CLOCK }).book();
      return courtGames(() => book).outlook(open(book), othersIn(book, open(book)))?.time;
    };
    expect([time('game'), time('shot')]).toEqual(['usual pace', 'aside']);
  });
  it('falls where a make took too long, and is nothing when no time is left for what is needed', () => {
    const spent = (left: number) => {
      const log = before(REACH, 5);
      shot(log, true, left);
      return chance(log);
    };
    expect(spent(115)).toBeGreaterThan(spent(60));
    expect(spent(60)).toBeGreaterThan(spent(30));
    expect(spent(0)).toBe(0);
  });
  it('stays at one once the game is won, whatever the clock says', () => {
    const log = before({ family: 'reach', needed: 1 }, 5);
    shot(log, true, 2);
    expect(chance(log)).toBeCloseTo(1, 9);
    expect(outlook(log)?.leverage).toBeCloseTo(0, 9);
  });
  it('knows that an opponent who is not on court takes no time', () => {
    const duel = (rate: number): GamePlan => ({
      family: 'duel',
      against: { kind: 'drawn', rate },
      headStart: 0,
      extraPairs: 2,
    });
    const log = before(duel(0.5), 3);
    expect(outlook(log)?.time).toBe('own pace');
    expect(chance(log)).toBeGreaterThan(chance(before(duel(0.9), 3)));
  });
});

describe('the chance in a duel on one court', () => {
  it('of both and of nobody winning add up, whoever shoots', () => {
    const plan: GamePlan = { family: 'duel', against: { kind: 'shooter' }, headStart: 0, extraPairs: 1 };
    const log = groupOf(plan, 'shot', ['ines', 'tobi'], {
      card: [{ spot: 'top', shot: 'catch', attempts: 2 }],
    });
    for (const made of [true, false, true]) {
      const book = log.book();
      const games = courtGames(() => book);
      const round = open(book);
      const others = othersIn(book, round);
      const [mine, theirs] = [games.outlook(round, others), games.outlook(others[0] as Round, [round])];
      const both = (mine?.chance ?? NaN) + (theirs?.chance ?? NaN);
      expect(both).toBeLessThan(1);
      expect(both).toBeGreaterThan(0.7);
      // A make helps who shoots, and hurts the other.
      expect(mine?.leverage).toBeGreaterThan(0);
      expect(theirs?.leverage).toBeLessThan(0);
      shoot(log, made);
    }
  });
});

describe('the work after a shot against the clock', () => {
  const plans: Readonly<Record<string, GamePlan>> = {
    reach: REACH,
    streak: { family: 'streak', row: 8, most: 100 },
    race: { family: 'race', to: 21, up: 1, down: 2, floor: null, lost: null, most: 100 },
    lives: { family: 'lives', needed: 20, lives: 10 },
    duel: { family: 'duel', against: { kind: 'drawn', rate: 0.7 }, headStart: 0, extraPairs: 5 },
  };
  it.each(Object.entries(plans))('of %s fits into a frame', (_family, plan) => {
    const log = before(plan, 4);
    shot(log, true, 110);
    const book = log.book();
    const round = open(book);
    const game = present(roundGame(book, round), 'a game');
    expect(game.pace).not.toBeNull();
    const times = Array.from({ length: 30 }, () => {
      const begun = performance.now();
      standingOf(solvedNow(game, round), round);
      return performance.now() - begun;
    }).toSorted((a, b) => a - b);
    // The median, on a machine that others use too.
    expect(times[15]).toBeLessThan(16);
  });
});
