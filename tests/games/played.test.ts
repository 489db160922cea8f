import { describe, expect, it } from 'vitest';

import { othersIn } from '../../renderer/games/gameOn.ts';
import { debtsOf } from '../../renderer/games/ledger.ts';
import { shotFacts } from '../../renderer/games/play.ts';
import { gameOutcome, needOf, verdictOf } from '../../renderer/games/played.ts';
import { turnResults } from '../../renderer/games/turnResults.ts';
import type { Round } from '../../renderer/log/book.ts';
import type { Ending } from '../../renderer/log/events.ts';
import type { PressureSetup } from '../../renderer/pressure/ingredients.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { onCourt, PRESSURE, started, tap, type Diary } from '../log/diary.ts';
import { gameSetup, groupOf, shoot } from './onCourt.ts';

const pressure = { ...PRESSURE, ingredients: [...PRESSURE.ingredients] };
const pressured = (change: Partial<PressureSetup> = {}) =>
  onCourt({ condition: 'pressured', pressure: { ...pressure, ...change, ingredients: [] } });
const end = (log: Diary, why: Ending = 'played-out', round = 'round 1') =>
  log.write('RoundEnded', { round, why, clockLeft: null });
const roundIn = (log: Diary): Round => {
  const { open, rounds } = log.book();
  const round = open ?? rounds.get('round 1');
  if (!round) throw new Error('there is a round');
  return round;
};

describe('the verdict on a mark of 3 of 4', () => {
  it.each([
    ['ooox', 'played-out', 'beaten'],
    ['oooo', 'played-out', 'beaten'],
    ['ooxx', 'played-out', 'short'],
    ['oo', 'time-up', 'short'],
    ['ooo', 'time-up', 'beaten'],
    ['oo', 'stopped', 'stopped'],
    // The mark was reached before the shooter stopped: it counts.
    ['ooo', 'stopped', 'beaten'],
    ['ooo', 'interrupted', 'void'],
    ['', 'interrupted', 'void'],
  ] as const)('%j, %s: %s', (shots, why, verdict) => {
    const log = pressured();
    tap(log, shots);
    expect(verdictOf(roundIn(log))).toBe('open');
    end(log, why);
    expect(verdictOf(roundIn(log))).toBe(verdict);
  });
  it('is none without a mark', () => {
    const log = pressured({ mark: null });
    tap(log, 'oooo');
    end(log);
    expect(verdictOf(roundIn(log))).toBeNull();
  });
});

describe('the verdict on a game', () => {
  const DUEL: GamePlan = { family: 'duel', against: { kind: 'drawn', rate: 1 }, headStart: 0, extraPairs: 0 };
  const LIVES: GamePlan = { family: 'lives', needed: 3, lives: 2 };
  it.each([
    ['won', LIVES, 'ooo', 'played-out', 'beaten'],
    ['lost', LIVES, 'oxx', 'played-out', 'short'],
    ['left before it was decided', LIVES, 'oox', 'stopped', 'stopped'],
    ['left when it could no longer be won', { family: 'reach', needed: 4 }, 'xx', 'stopped', 'short'],
    ['left when it was won already', { family: 'reach', needed: 2 }, 'oo', 'stopped', 'beaten'],
    ['broken off by the device', LIVES, 'ooo', 'interrupted', 'void'],
    ['level to the end', DUEL, 'ooooo', 'played-out', 'level'],
    ['level when time was up', DUEL, 'oo', 'time-up', 'level'],
    ['left level', DUEL, 'oo', 'stopped', 'stopped'],
    ['behind when time was up', DUEL, 'ox', 'time-up', 'short'],
  ] as const)('%s', (_what, plan, shots, why, verdict) => {
    const log = onCourt(gameSetup(plan));
    for (const shot of shots) log.tap(shotFacts(roundIn(log), shot === 'o', null).slice(0, 1));
    end(log, why);
    expect(verdictOf(roundIn(log))).toBe(verdict);
  });
});

describe('what came of the chance of a game', () => {
  const LIVES: GamePlan = { family: 'lives', needed: 3, lives: 2 };
  const after = (shots: string, why: Ending, change: Partial<PressureSetup> = {}) => {
    const game = { name: 'A game', plan: LIVES, chance: 0.35 };
    const log = onCourt(gameSetup(LIVES, { game, ...change }));
    for (const shot of shots) log.tap(shotFacts(roundIn(log), shot === 'o', null).slice(0, 1));
    end(log, why);
    return gameOutcome(roundIn(log), []);
  };

  it.each([
    ['won', 'ooo', 'played-out', { chance: 0.35, beaten: true }],
    ['lost', 'oxx', 'played-out', { chance: 0.35, beaten: false }],
    // The chance of a game knows how far the time goes.
    ['not won when time was up', 'oo', 'time-up', { chance: 0.35, beaten: false }],
    ['left before it was decided', 'oo', 'stopped', null],
    ['broken off by the device', 'ooo', 'interrupted', null],
  ] as const)('%s', (_what, shots, why, outcome) => {
    expect(after(shots, why)).toEqual(outcome);
  });
  it('is open where it was not told, or there is no game', () => {
    expect(after('ooo', 'played-out', { game: { name: 'A game', plan: LIVES, chance: null } })).toBeNull();
    expect(after('ooo', 'played-out', { game: null, mark: { makes: 2, chance: 0.5 } })).toBeNull();
  });
  it('is left out where the chance did not know of the clock', () => {
    const log = onCourt(gameSetup(LIVES, { game: { name: 'A game', plan: LIVES, chance: 0.35 } }));
    log.write('TurnExpired', { round: 'round 1', stop: 0 });
    log.write('TurnExpired', { round: 'round 1', stop: 0 });
    end(log);
    expect(verdictOf(roundIn(log))).toBe('short');
    expect(gameOutcome(roundIn(log), [])).toBeNull();
    const timed = { ...roundIn(log), entries: [], pressure: roundIn(log).pressure };
    const clock = { kind: 'round', seconds: 60 } as const;
    const group = { id: 'together', place: 1, turns: 'stop' } as const;
    const together = { ...timed, pressure: timed.pressure && { ...timed.pressure, clock } };
    expect(gameOutcome(together, [])).toEqual({ chance: 0.35, beaten: false });
    expect(gameOutcome({ ...together, group }, [])).toBeNull();
    // Each with a clock alone.
    expect(gameOutcome({ ...together, group: { ...group, turns: 'game' } }, [])).not.toBeNull();
  });
  it('is one for each side of a duel, and a level one is won by neither', () => {
    const plan: GamePlan = { family: 'duel', against: { kind: 'shooter' }, headStart: 0, extraPairs: 0 };
    const game = { name: 'A duel', plan, chance: 0.5 };
    const outcomes = (shots: string) => {
      const log = groupOf(plan, 'shot', ['ines', 'tarek'], { game });
      for (const shot of shots) shoot(log, shot === 'o');
      const book = log.book();
      const rounds = ['ines', 'tarek'].flatMap((name) => book.rounds.get(`round ${name}`) ?? []);
      return rounds.map((round) => gameOutcome(round, othersIn(book, round))?.beaten);
    };
    expect(outcomes('oxoxox')).toEqual([true, false]);
    expect(outcomes('xxxxxxxxxx')).toEqual([false, false]);
    const log = groupOf(plan, 'shot', ['ines', 'tarek'], { game });
    for (const shot of 'oxoxox') shoot(log, shot === 'o');
    const [ines] = log.book().rounds.values();
    if (!ines) throw new Error('a round');
    // Without the other's shots nobody can say.
    expect(gameOutcome(ines, [])).toBeNull();
  });
});

describe('what is needed', () => {
  it.each([
    ['', 3, 4],
    ['o', 2, 3],
    ['xx', 3, 2],
    ['oooo', 0, 0],
  ])('after %j: %d more, %d turns left', (shots, needed, left) => {
    const log = pressured();
    tap(log, shots);
    expect(needOf(roundIn(log))).toEqual({ needed, left });
  });
  it('is nothing without a mark, and a turn the clock took is gone', () => {
    const log = pressured({ mark: null });
    log.write('TurnExpired', { round: 'round 1', stop: 0 });
    expect(needOf(roundIn(log))).toEqual({ needed: 0, left: 3 });
  });
});

describe('the turns of a round', () => {
  it('come out in order; of a count, the makes come first', () => {
    const log = onCourt();
    tap(log, 'x');
    log.write('TurnExpired', { round: 'round 1', stop: 0 });
    log.write('StopCounted', { round: 'round 1', stop: 1, makes: 1, attempts: 2 });
    expect(turnResults(roundIn(log))).toEqual(['miss', 'lost', 'make', 'miss']);
  });
});

describe('the ledger', () => {
  it.each([
    ['ooox', 'played-out', 'others'],
    ['xxxx', 'played-out', 'shooter'],
    ['xx', 'time-up', 'shooter'],
  ] as const)('%j, %s: owed by %s', (shots, why, owes) => {
    const log = pressured();
    tap(log, shots);
    end(log, why);
    expect(debtsOf(log.book(), 'ines')).toMatchObject([{ stake: 'Loser buys lunch', owes, settled: false }]);
    expect(debtsOf(log.book(), 'tobi')).toEqual([]);
  });
  it.each([
    ['an open round', {}, 'oo', null],
    ['a round the shooter stopped', {}, 'oo', 'stopped'],
    ['a round the device broke off', {}, 'oooo', 'interrupted'],
    ['a round without a stake', { stake: null }, 'oooo', 'played-out'],
    ['a stake without a mark', { mark: null }, 'oooo', 'played-out'],
  ] as const)('holds nothing of %s', (_what, change, shots, why) => {
    const log = pressured(change);
    tap(log, shots);
    if (why) end(log, why);
    expect(debtsOf(log.book(), 'ines')).toEqual([]);
  });
  it('has the newest first, and knows what is settled', () => {
    const log = pressured();
    tap(log, 'xxxx');
    end(log);
    log.write(
      'RoundStarted',
      started({ round: 'round 2', condition: 'pressured', pressure: { ...pressure, stake: 'Loser sings' } }),
    );
    for (const stop of [0, 0, 1, 1])
      log.write('ShotTaken', { round: 'round 2', stop, made: true, side: null });
    end(log, 'played-out', 'round 2');
    log.write('StakeSettled', { round: 'round 1' });
    expect(debtsOf(log.book(), 'ines').map(({ stake, owes, settled }) => [stake, owes, settled])).toEqual([
      ['Loser sings', 'others', false],
      ['Loser buys lunch', 'shooter', true],
    ]);
    // Opened again and ended once more, the older round does not become the newest.
    log.write('RoundReopened', { round: 'round 1' });
    end(log);
    expect(debtsOf(log.book(), 'ines').map(({ stake }) => stake)).toEqual([
      'Loser sings',
      'Loser buys lunch',
    ]);
    log.write('StakeSettled', { round: 'round 1' });
    log.write('StakeReopened', { round: 'round 1' });
    expect(debtsOf(log.book(), 'ines').some(({ settled }) => settled)).toBe(false);
  });
});
