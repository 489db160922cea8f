import { beforeEach, describe, expect, it } from 'vitest';

import { EMPTY_BOOK } from '../../renderer/log/book.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { demoSeason } from '../../renderer/games/demoSeason.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { suggestRung, type Rung } from '../../renderer/pressure/ladder.ts';
import { ladderStanding } from '../../renderer/store/ladder.ts';
import { diary, INES, PRESSURE, started, type Diary } from '../log/diary.ts';

/* What the ladder makes of a record. Ines is an even shooter: about half of her free throws, nerves 2 when relaxed. */

let log: Diary;
let rounds = 0;
beforeEach(() => {
  rounds = 0;
  log = diary();
  log.write('ShooterAdded', INES);
});

interface Told {
  readonly nerves?: number | null;
  readonly after?: number | null;
  readonly rung?: Rung | null;
  readonly stake?: string | null;
  readonly watched?: boolean;
  readonly tooMuch?: boolean;
  readonly plan?: GamePlan;
  /** Ends it before the card was shot out. */
  readonly broken?: boolean;
}

function visit(day: number): string {
  const session = `visit ${day}`;
  log.write('SessionStarted', {
    session,
    shooter: 'ines',
    date: `2026-11-${String(day).padStart(2, '0')}`,
  });
  return session;
}

/** One round of twenty free throws, counted. */
function shoot(session: string, condition: 'relaxed' | 'pressured', makes: number, told: Told = {}): void {
  rounds += 1;
  const round = `round ${rounds}`;
  const { nerves = condition === 'relaxed' ? 2 : 5, rung = 'watched', stake = null, watched = false } = told;
  const pressure = {
    ...PRESSURE,
    ingredients: watched ? (['watchers'] as const) : [],
    stake,
    mark: null,
    ...(rung === null ? {} : { rung }),
    ...(told.plan ? { game: { name: 'A game', plan: told.plan, chance: null } } : {}),
  };
  log.write(
    'RoundStarted',
    started({
      round,
      session,
      condition,
      nerves,
      entry: 'counts',
      card: { id: 'line', name: 'Line', stops: [{ spot: 'free-throw', shot: 'free-throw', attempts: 20 }] },
      pressure: condition === 'pressured' ? pressure : null,
    }),
  );
  const attempts = told.broken ? 19 : 20;
  log.write('StopCounted', { round, stop: 0, makes, attempts });
  log.write('RoundEnded', { round, why: told.broken ? 'stopped' : 'played-out', clockLeft: null });
  const { after = null, tooMuch } = told;
  log.write('AfterRated', {
    round,
    nerves: after,
    effort: null,
    note: '',
    ...(tooMuch === undefined ? {} : { tooMuch }),
  });
}

/** Four days on which Ines makes half of her free throws in both conditions, and nobody asked about rungs. */
function usual(): void {
  for (const day of [1, 3, 5, 7]) {
    const session = visit(day);
    shoot(session, 'relaxed', 10);
    shoot(session, 'pressured', 10, { nerves: 2, rung: 'logged' });
  }
}
const pressuredDay = (day: number, makes: number, told: Told = {}): void =>
  shoot(visit(day), 'pressured', makes, told);
const standing = () => ladderStanding(log.book(), 'ines');
const suggested = () => suggestRung(standing(), []);

describe('where a shooter stands', () => {
  it('is nowhere before the first pressured round', () => {
    shoot(visit(1), 'relaxed', 10);
    expect(standing()).toBeNull();
  });

  it('goes up after two days on which nerves rose and the makes were within their span', () => {
    usual();
    pressuredDay(9, 10);
    expect(standing()).toEqual({ rung: 'watched', good: 1, hurt: false });
    pressuredDay(11, 9);
    expect(standing()).toEqual({ rung: 'watched', good: 2, hurt: false });
    expect(suggested()).toMatchObject({ rung: 'filmed', move: 'up' });
  });

  it('is held where nerves did not rise above the usual relaxed ones', () => {
    usual();
    pressuredDay(9, 10, { nerves: 2 });
    pressuredDay(11, 12, { nerves: 1 });
    expect(standing()).toMatchObject({ good: 0, hurt: false });
  });

  it('more makes than expected are held as well', () => {
    usual();
    pressuredDay(9, 19);
    expect(standing()).toMatchObject({ good: 1 });
  });

  it('does not hold far below the span', () => {
    usual();
    pressuredDay(9, 10);
    pressuredDay(11, 1);
    expect(standing()).toEqual({ rung: 'watched', good: 0, hurt: false });
  });

  it('lets one round in three fall below', () => {
    usual();
    const two = visit(9);
    for (const makes of [10, 1]) shoot(two, 'pressured', makes);
    expect(standing()).toMatchObject({ good: 0 });
    const three = visit(11);
    for (const makes of [10, 1, 10]) shoot(three, 'pressured', makes);
    expect(standing()).toMatchObject({ good: 1 });
  });

  it('goes down where nerves of 8 met a result below its span, before the round or in it', () => {
    usual();
    pressuredDay(9, 1, { nerves: 8 });
    expect(standing()).toMatchObject({ hurt: true });
    expect(suggested()).toMatchObject({ rung: 'logged', move: 'down' });
    pressuredDay(11, 1, { nerves: 5, after: 9 });
    expect(standing()).toMatchObject({ hurt: true });
  });

  it('does not go down for nerves alone, nor for misses alone', () => {
    usual();
    pressuredDay(9, 10, { nerves: 10 });
    expect(standing()).toMatchObject({ hurt: false });
    pressuredDay(11, 1, { nerves: 7 });
    expect(standing()).toMatchObject({ hurt: false });
  });

  it('takes the shooter’s word before its own', () => {
    usual();
    pressuredDay(9, 15, { nerves: 3, tooMuch: true });
    expect(standing()).toMatchObject({ hurt: true });
    pressuredDay(11, 1, { nerves: 9, tooMuch: false });
    expect(standing()).toMatchObject({ hurt: false });
  });

  it('learns nothing from rounds that have no span', () => {
    usual();
    pressuredDay(9, 10, { broken: true });
    pressuredDay(11, 10, { plan: { family: 'streak', row: 3, most: 20 } });
    expect(standing()).toEqual({ rung: 'watched', good: 0, hurt: false });
  });

  it('is the highest rung of the day', () => {
    usual();
    const session = visit(9);
    for (const rung of ['watched', 'judged', 'logged'] as const) shoot(session, 'pressured', 10, { rung });
    expect(standing()).toMatchObject({ rung: 'judged' });
  });

  it.each<readonly [Told, Rung]>([
    [{}, 'logged'],
    [{ watched: true }, 'watched'],
    [{ watched: true, stake: 'Lunch' }, 'forfeit'],
  ])('of a round from before there was a ladder goes by its setup: %j is %s', (told, rung) => {
    pressuredDay(9, 10, { ...told, rung: null });
    expect(standing()).toMatchObject({ rung });
  });

  it('cannot tell that nerves rose without a usual line', () => {
    pressuredDay(9, 10, { nerves: 9 });
    expect(standing()).toMatchObject({ good: 0, hurt: false });
  });
});

it('the invented season has both shooters on a rung, worked out in no time the second time', () => {
  const book = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
  for (const shooter of book.shooters.keys()) {
    expect(ladderStanding(book, shooter)).toMatchObject({ rung: 'forfeit' });
    expect(ladderStanding(book, shooter)).toBe(ladderStanding(book, shooter));
  }
});
