import { describe, expect, it } from 'vitest';

import { present } from '../../renderer/basics/invariant.ts';
import { endFacts } from '../../renderer/games/play.ts';
import { othersIn } from '../../renderer/games/gameOn.ts';
import { EMPTY_BOOK } from '../../renderer/log/book.ts';
import {
  duelOn,
  FIRST_DUEL,
  fitsGame,
  freshGroup,
  groupGamesOf,
  rematchOf,
  turnsIn,
  withGame,
  type GroupGame,
} from '../../renderer/store/groupWish.ts';
import type { Diary } from '../log/diary.ts';
import { gameSetup, groupOf, shoot } from '../games/onCourt.ts';

const games = groupGamesOf(EMPTY_BOOK);
const game = (id: string): GroupGame =>
  present(
    games.find((one) => one.id === id),
    id,
  );
const duel = duelOn(FIRST_DUEL);

describe('the games of several', () => {
  it('are all but the duels, which are for two', () => {
    expect(games.map(({ plan }) => plan.family)).not.toContain('duel');
    expect(games).toHaveLength(28);
    expect([1, 2, 3].map((players) => fitsGame(duel, players))).toEqual([false, true, false]);
    expect([1, 2, 8, 9].map((players) => fitsGame(game('lives-line'), players))).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });
  it.each([
    ['a duel', duel, ['shot']],
    ['racks against one clock', game('racks-minute'), ['game']],
    ['one spot', game('lives-line'), ['shot', 'game']],
    ['trips to the line', game('trip-bonus'), ['shot', 'game']],
    ['several spots', game('reach-arc'), ['shot', 'stop', 'game']],
    ['last shots, each with a clock of its own', game('last-corners'), ['shot', 'stop', 'game']],
  ] as const)('of %s pass the turn where that makes sense', (_, one, turns) => {
    expect(turnsIn(one)).toEqual(turns);
  });
  it('keep the turns that were chosen where the next game allows them', () => {
    const wish = { ...freshGroup(['ines'], game('reach-arc')), turns: 'stop' as const, headStart: 3 };
    expect(wish.turns).toBe('stop');
    expect(withGame(wish, game('climb-arc'))).toMatchObject({ turns: 'stop', headStart: null });
    expect(withGame(wish, game('racks-minute')).turns).toBe('game');
    expect(withGame(wish, duel).turns).toBe('shot');
    expect(freshGroup(['ines'], game('racks-minute')).turns).toBe('game');
  });
});

describe('the same again', () => {
  const SHOOTERS = ['ines', 'tobi', 'ada'];
  const over = (log: Diary): Diary => {
    const { open } = log.book();
    if (open) log.tap(endFacts(open, 'stopped', othersIn(log.book(), open)));
    return log;
  };
  const lives = { family: 'lives', needed: 3, lives: 2 } as const;

  it('has the shooters, the game, the turns and the stake of the last time', () => {
    const log = over(groupOf(lives, 'stop', SHOOTERS));
    expect(rematchOf(log.book(), 'round tobi')).toMatchObject({
      shooters: SHOOTERS,
      game: { name: 'A game', plan: lives, clock: null, stops: gameSetup(lives).card?.stops },
      turns: 'stop',
      order: 'listed',
      wanted: null,
      headStart: null,
      stake: 'Loser buys lunch',
    });
  });
  it('leaves out who is no longer there, and is none with one alone', () => {
    const log = over(groupOf(lives, 'shot', SHOOTERS));
    log.write('ShooterRemoved', { shooter: 'tobi' });
    expect(rematchOf(log.book(), 'round ines')?.shooters).toEqual(['ines', 'ada']);
    log.write('ShooterRemoved', { shooter: 'ada' });
    expect(rematchOf(log.book(), 'round ines')).toBeNull();
  });
  it('keeps the head start of a duel', () => {
    const plan = { family: 'duel', against: { kind: 'shooter' }, headStart: -2, extraPairs: 3 } as const;
    const log = groupOf(plan, 'shot', ['ines', 'tobi']);
    shoot(log, true);
    expect(rematchOf(over(log).book(), 'round ines')).toMatchObject({
      shooters: ['ines', 'tobi'],
      headStart: -2,
      wanted: null,
    });
  });
  it('finds the marks anew where everybody had their own, from the game they came from', () => {
    const base = game('lives-line');
    const log = groupOf(lives, 'shot', SHOOTERS, { card: base.stops });
    const events = log.events.map((event) =>
      event.type === 'RoundStarted'
        ? {
            ...event,
            body: {
              ...event.body,
              card: { ...event.body.card, id: base.id },
              pressure: event.body.pressure && {
                ...event.body.pressure,
                game: {
                  name: 'Their own',
                  plan: { ...lives, needed: event.body.shooter === 'ines' ? 9 : 4 },
                  chance: 0.36,
                },
              },
            },
          }
        : event,
    );
    const again = groupOf(lives, 'shot', []);
    for (const event of events) again.tap([event]);
    expect(rematchOf(over(again).book(), 'round ines')).toMatchObject({
      game: { id: base.id, name: base.name, plan: base.plan },
      wanted: 0.33,
    });
  });
  it('is none of a round that was shot alone, or of one that is not known', () => {
    expect(rematchOf(EMPTY_BOOK, null)).toBeNull();
    expect(rematchOf(EMPTY_BOOK, 'reach-line')).toBeNull();
  });
});
