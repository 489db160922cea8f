import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Stop } from '../../renderer/court/cards.ts';
import type { DuelState } from '../../renderer/games/duel.ts';
import { gameOn, nextStop, opponentShots, othersIn } from '../../renderer/games/gameOn.ts';
import { standings } from '../../renderer/games/group.ts';
import { endFacts, shotFacts, undoFacts } from '../../renderer/games/play.ts';
import { verdictOf } from '../../renderer/games/played.ts';
import type { Book, Round } from '../../renderer/log/book.ts';
import type { GroupTurns } from '../../renderer/log/events.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { diary, INES, PRESSURE, started, type Diary } from '../log/diary.ts';

const CARD: readonly Stop[] = [
  { spot: 'left-wing', shot: 'catch', attempts: 2 },
  { spot: 'top', shot: 'catch', attempts: 2 },
];

const PLANS: readonly GamePlan[] = [
  { family: 'reach', needed: 3 },
  { family: 'last shot', needed: 2, from: 2, to: 6 },
  { family: 'streak', row: 3, most: 12 },
  { family: 'race', to: 4, up: 1, down: 1, floor: 0, lost: null, most: 14 },
  { family: 'lives', needed: 5, lives: 3 },
  { family: 'trips', kind: 'one-and-one', trips: 3, needed: 4, scene: { down: 1, left: 3 } },
  { family: 'racks', double: 'coin', needed: 3 },
  { family: 'climb', makes: [1, 2], back: 1, most: 12 },
  { family: 'duel', against: { kind: 'drawn', rate: 0.5 }, headStart: 0, extraPairs: 3 },
  {
    family: 'duel',
    against: { kind: 'own round', round: 'old', made: [true, false, true, true] },
    headStart: 0,
    extraPairs: 0,
  },
];

function playing(plan: GamePlan, seed = 7): Diary {
  const log = diary();
  log.write('ShooterAdded', INES);
  log.write('SessionStarted', { session: 'visit 1', shooter: 'ines', date: '2026-11-25' });
  log.write('RoundStarted', {
    ...started({ condition: 'pressured' }),
    card: { id: 'c', name: 'Card', stops: [...CARD] },
    pressure: { ...PRESSURE, ingredients: [], mark: null, seed, game: { name: 'A game', plan, chance: 0.5 } },
  });
  return log;
}

function tap(log: Diary, made: boolean): void {
  const book = log.book();
  if (book.open) log.tap(shotFacts(book.open, made, null, othersIn(book, book.open)));
}

const roundIn = (book: Book): Round => {
  const round = book.open ?? [...book.rounds.values()].at(-1);
  if (!round) throw new Error('no round');
  return round;
};

describe.each(PLANS.map((plan) => [plan.family, plan] as const))('a round of %s', (_, plan) => {
  it('goes where its rule says, ends when its rule ends, and is won when its rule is won', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 14, maxLength: 14 }), (shots) => {
        const log = playing(plan);
        let shot = 0;
        for (; log.book().open; shot += 1) {
          const round = roundIn(log.book());
          const on = gameOn(round);
          expect(on?.over).toBe(false);
          expect(verdictOf(round)).toBe('open');
          expect(nextStop(round)).toBe(on?.stops[on.rule.shot(on.state)]);
          tap(log, shots[shot % shots.length] ?? false);
        }
        const round = roundIn(log.book());
        expect(log.book().skipped).toBe(0);
        expect(round).toMatchObject({ state: 'ended', ending: 'played-out', game: 'A game' });
        expect(round.entries).toHaveLength(shot);
        expect(nextStop(round)).toBeNull();
        const end = gameOn(round);
        const level = plan.family === 'duel' && (end?.state as DuelState | undefined)?.ahead === 0;
        expect(verdictOf(round)).toBe(end?.won ? 'beaten' : level ? 'level' : 'short');
        // Whatever is tapped now changes nothing.
        expect(shotFacts(round, true, null)).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  it('can be taken back to the start, shot by shot', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }), (shots) => {
        const log = playing(plan);
        for (const made of shots) tap(log, made);
        for (let left = roundIn(log.book()).entries.length; left > 0; left -= 1) {
          log.tap(undoFacts(roundIn(log.book())));
          const { open } = log.book();
          expect(open?.entries).toHaveLength(left - 1);
          expect(open && nextStop(open)).not.toBeNull();
        }
        expect(log.book().skipped).toBe(0);
      }),
      { numRuns: 15 },
    );
  });

  it('keeps its shots and loses its game when it is left', () => {
    const log = playing(plan);
    tap(log, true);
    log.tap(endFacts(roundIn(log.book()), 'stopped'));
    const round = roundIn(log.book());
    expect(round.entries).toHaveLength(1);
    expect(verdictOf(round)).toBe(gameOn(round)?.over ? 'short' : 'stopped');
  });
});

describe('an opponent who is not on court', () => {
  it('has no extra shots where it is an earlier round: level, nobody has won', () => {
    const against = { kind: 'own round', round: 'old', made: [true, false, true, true] } as const;
    const log = playing({ family: 'duel', against, headStart: 0, extraPairs: 3 });
    for (const made of [true, false, true, true]) tap(log, made);
    const round = roundIn(log.book());
    expect(round).toMatchObject({ state: 'ended' });
    expect(gameOn(round)).toMatchObject({ over: true, won: false });
  });

  it('shoots the same whenever it is asked, and about as well as it should', () => {
    const against = { kind: 'drawn', rate: 0.7 } as const;
    expect(opponentShots(against, 3, 20)).toEqual(opponentShots(against, 3, 50).slice(0, 20));
    const made = Array.from({ length: 200 }, (_, seed) => opponentShots(against, seed, 25)).flat();
    // Four standard errors.
    expect(Math.abs(made.filter(Boolean).length / made.length - 0.7)).toBeLessThan(0.026);
  });
});

const GROUP: GamePlan = { family: 'lives', needed: 3, lives: 2 };

function group(plan: GamePlan, turns: GroupTurns, shooters = ['ines', 'tobi', 'ada']): Diary {
  const log = diary();
  for (const [at, shooter] of shooters.entries()) {
    log.write('ShooterAdded', { ...INES, shooter, name: shooter });
    log.write('SessionStarted', { session: `visit ${at}`, shooter, date: '2026-11-25' });
  }
  for (const [at, shooter] of shooters.entries()) {
    log.write('RoundStarted', {
      ...started({ condition: 'pressured', round: `round ${shooter}`, session: `visit ${at}`, shooter }),
      card: { id: 'c', name: 'Card', stops: [...CARD] },
      pressure: { ...PRESSURE, ingredients: [], mark: null, game: { name: 'Together', plan, chance: null } },
      group: { id: 'g', place: at + 1, turns },
    });
  }
  return log;
}

const onCourt = (log: Diary): string | undefined => log.book().open?.shooter;

describe('a group', () => {
  it('starts with the first, and the others wait', () => {
    const book = group(GROUP, 'shot').book();
    expect(book.open?.shooter).toBe('ines');
    expect([...book.waiting.values()].map(({ shooter }) => shooter)).toEqual(['tobi', 'ada']);
  });

  it('shoots in turn, and whoever is out is left out', () => {
    const log = group(GROUP, 'shot');
    const seen: (string | undefined)[] = [];
    // Tobi misses both lives away; the others make all.
    while (log.book().open) {
      seen.push(onCourt(log));
      tap(log, onCourt(log) !== 'tobi');
    }
    expect(seen).toEqual(['ines', 'tobi', 'ada', 'ines', 'tobi', 'ada', 'ines', 'ada']);
    const { rounds, waiting, skipped } = log.book();
    expect([skipped, waiting.size, rounds.size]).toEqual([0, 0, 3]);
    const table = standings([...rounds.values()]);
    expect(table.map(({ round, won }) => [round.shooter, won])).toEqual([
      ['ines', true],
      ['ada', true],
      ['tobi', false],
    ]);
  });

  it('can pass the turn after a stop, or after a whole game', () => {
    const stops = group({ family: 'reach', needed: 2 }, 'stop');
    const games = group({ family: 'reach', needed: 2 }, 'game');
    const order = (log: Diary): (string | undefined)[] => {
      const seen: (string | undefined)[] = [];
      while (log.book().open) {
        seen.push(onCourt(log));
        tap(log, true);
      }
      return seen;
    };
    expect(order(stops).join(' ')).toBe('ines ines tobi tobi ada ada ines ines tobi tobi ada ada');
    expect(order(games).join(' ')).toBe('ines ines ines ines tobi tobi tobi tobi ada ada ada ada');
  });

  it('takes back the last shot, whoever took it', () => {
    const log = group(GROUP, 'shot');
    tap(log, true);
    tap(log, false);
    expect(onCourt(log)).toBe('ada');
    const undo = () => {
      const book = log.book();
      const round = book.open ?? [...book.rounds.values()].at(-1);
      if (round) log.tap(undoFacts(round, othersIn(book, round)));
    };
    undo();
    expect(onCourt(log)).toBe('tobi');
    expect(log.book().open?.entries).toEqual([]);
    undo();
    expect(onCourt(log)).toBe('ines');
    expect(log.book().open?.entries).toEqual([]);
    expect(log.book().skipped).toBe(0);
  });

  it('ends for everyone where it is left, and makes room for another round', () => {
    const log = group(GROUP, 'shot');
    tap(log, true);
    const book = log.book();
    const { open } = book;
    if (!open) throw new Error('a round on court');
    log.tap(endFacts(open, 'stopped', othersIn(book, open)));
    expect(log.book()).toMatchObject({ open: null, skipped: 0 });
    expect(log.book().waiting.size).toBe(0);
  });
});

describe('a duel on one court', () => {
  const DUEL: GamePlan = {
    family: 'duel',
    against: { kind: 'shooter' },
    headStart: 0,
    extraPairs: 4,
  };
  it('is shot in turn, decided for both at once, and won by one at most', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 24, maxLength: 24 }), (shots) => {
        const log = group(DUEL, 'shot', ['ines', 'tobi']);
        const taken = [];
        while (log.book().open) {
          taken.push(onCourt(log));
          tap(log, shots[taken.length - 1] ?? false);
        }
        expect(taken.every((who, at) => who === (at % 2 === 0 ? 'ines' : 'tobi'))).toBe(true);
        const { rounds, skipped } = log.book();
        expect(skipped).toBe(0);
        const verdicts = [...rounds.values()].map((round) => verdictOf(round, othersIn(log.book(), round)));
        expect(verdicts.filter((verdict) => verdict === 'beaten').length).toBeLessThanOrEqual(1);
        const makes = (who: string) =>
          [...rounds.values()]
            .find(({ shooter }) => shooter === who)
            ?.entries.filter((entry) => entry.kind === 'shot' && entry.made).length ?? 0;
        const winner = [...rounds.values()].find(
          (round) => verdictOf(round, othersIn(log.book(), round)) === 'beaten',
        );
        const ahead = makes('ines') - makes('tobi');
        expect(winner?.shooter).toBe(ahead === 0 ? undefined : ahead > 0 ? 'ines' : 'tobi');
      }),
      { numRuns: 60 },
    );
  });

  it('goes on where its last shot is taken back', () => {
    const log = group(DUEL, 'shot', ['ines', 'tobi']);
    // Three to none cannot be caught with one left each.
    for (let at = 0; log.book().open; at += 1) tap(log, at % 2 === 0);
    const book = log.book();
    const [last] = [...book.rounds.values()].toSorted((a, b) => b.entries.length - a.entries.length);
    if (!last) throw new Error('a round');
    log.tap(undoFacts(last, othersIn(book, last)));
    expect(log.book().skipped).toBe(0);
    expect(log.book().open?.shooter).toBe('ines');
    expect(log.book().waiting.size).toBe(1);
    tap(log, false);
    expect(onCourt(log)).toBe('tobi');
  });
});
