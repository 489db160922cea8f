import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { nextStop, othersIn } from '../../renderer/games/gameOn.ts';
import { drawOrder, standings } from '../../renderer/games/group.ts';
import { leaveFacts, undoFacts } from '../../renderer/games/play.ts';
import { verdictOf } from '../../renderer/games/played.ts';
import { EMPTY_BOOK, type Book, type Round } from '../../renderer/log/book.ts';
import { parseEvent } from '../../renderer/log/envelope.ts';
import { GROUP_TURNS } from '../../renderer/log/events.ts';
import { foldParsed } from '../../renderer/log/fold.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { uuidV7 } from '../../renderer/basics/ids.ts';
import { rngFromSeed } from '../../renderer/basics/chance.ts';
import type { Diary } from '../log/diary.ts';
import { groupOf, shoot } from './onCourt.ts';
import { anyPlan } from './plans.ts';

const LIVES: GamePlan = { family: 'lives', needed: 3, lives: 2 };
const DUEL: GamePlan = { family: 'duel', against: { kind: 'shooter' }, headStart: 0, extraPairs: 2 };
const THREE = ['ines', 'tobi', 'ada'];

const onCourt = (log: Diary): string | undefined => log.book().open?.shooter;

/** The round a finger on "undo" means: the one on court, or the one the verdict is about. */
function roundHere(book: Book): Round {
  const round = book.open ?? [...book.rounds.values()].at(-1);
  if (!round) throw new Error('no round');
  return round;
}

function undo(log: Diary): void {
  const book = log.book();
  const round = roundHere(book);
  log.tap(undoFacts(round, othersIn(book, round)));
}

function leave(log: Diary, shooter: string): void {
  const book = log.book();
  const { open } = book;
  if (!open) return;
  const others = othersIn(book, open);
  const leaver = [open, ...others].find((round) => round.shooter === shooter);
  if (leaver) log.tap(leaveFacts(open, leaver, others));
}

/** Everything that can be seen of the group: who shoots, who waits, and everyone's shots. */
function seen({ open, waiting, rounds }: Book): unknown {
  const all = [...(open ? [open] : []), ...waiting.values(), ...rounds.values()];
  return {
    open: open?.shooter ?? null,
    waiting: [...waiting.values()].map(({ shooter }) => shooter).toSorted(),
    shots: Object.fromEntries(
      all.map(({ shooter, entries, ending }) => [
        shooter,
        [...entries.map((entry) => (entry.kind === 'shot' ? entry.made : entry.kind)), ending],
      ]),
    ),
  };
}

describe('the order drawn by chance', () => {
  it('is the same for the same seed, however the shooters are listed', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.string({ minLength: 1 }), { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 0, max: 0xffffffff }),
        (shooters, seed) => {
          const order = drawOrder(shooters, seed);
          expect(order.toSorted()).toEqual(shooters.toSorted());
          expect(drawOrder(shooters.toReversed(), seed)).toEqual(order);
        },
      ),
    );
  });
  it('is each as likely', () => {
    const draws = 6000;
    const counts = new Map<string, number>();
    for (let seed = 0; seed < draws; seed += 1) {
      const order = drawOrder(THREE, seed).join(' ');
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    expect(counts.size).toBe(6);
    // Five standard deviations of a count with mean 1000.
    for (const count of counts.values()) expect(Math.abs(count - draws / 6)).toBeLessThan(5 * 28.9);
  });
});

describe('one who has to go', () => {
  it('ends their own round, and the turn goes on to the next', () => {
    const log = groupOf(LIVES, 'shot', THREE);
    shoot(log, true);
    shoot(log, true);
    leave(log, 'ada');
    expect(onCourt(log)).toBe('ines');
    expect(log.book().rounds.get('round ada')).toMatchObject({ state: 'ended', ending: 'stopped' });
    const order = [];
    while (onCourt(log)) {
      order.push(onCourt(log));
      shoot(log, true);
    }
    expect(order).toEqual(['ines', 'tobi', 'ines', 'tobi']);
    expect(log.book().skipped).toBe(0);
    const rounds = [...log.book().rounds.values()];
    const verdicts = standings(rounds).map(({ round }) => [
      round.shooter,
      verdictOf(
        round,
        rounds.filter(({ id }) => id !== round.id),
      ),
    ]);
    expect(verdicts).toEqual([
      ['ines', 'beaten'],
      ['tobi', 'beaten'],
      ['ada', 'stopped'],
    ]);
  });
  it('may be waiting: then the turn stays where it is', () => {
    const log = groupOf(LIVES, 'shot', THREE);
    leave(log, 'tobi');
    expect(onCourt(log)).toBe('ines');
    shoot(log, true);
    expect(onCourt(log)).toBe('ada');
  });
  it('can be the last one: then the game is over', () => {
    const log = groupOf(LIVES, 'shot', THREE);
    for (const shooter of THREE) leave(log, shooter);
    expect(log.book()).toMatchObject({ open: null, skipped: 0 });
    expect(log.book().waiting.size).toBe(0);
  });
  it('ends a duel for both', () => {
    const log = groupOf(DUEL, 'shot', ['ines', 'tobi']);
    shoot(log, true);
    leave(log, 'tobi');
    expect([...log.book().rounds.values()].map(({ ending }) => ending)).toEqual(['stopped', 'stopped']);
  });
  it('comes back by an undo, and has the turn they had', () => {
    for (const turns of GROUP_TURNS) {
      const log = groupOf(LIVES, turns, THREE);
      shoot(log, false);
      const before = log.book();
      for (const shooter of THREE) {
        leave(log, shooter);
        undo(log);
        expect(seen(log.book())).toEqual(seen(before));
      }
      expect(log.book().skipped).toBe(0);
    }
  });
});

describe('a game of several', () => {
  const steps = fc.array(
    fc.oneof({ weight: 8, arbitrary: fc.boolean() }, { weight: 1, arbitrary: fc.constantFrom(...THREE) }),
    { minLength: 1, maxLength: 30 },
  );

  const games = fc.oneof(
    fc.record({
      plan: anyPlan,
      turns: fc.constantFrom(...GROUP_TURNS),
      shooters: fc.constant(THREE),
    }),
    fc.constant({ plan: DUEL, turns: 'shot', shooters: ['ines', 'tobi'] } as const),
  );

  it('can be taken back step by step to its start, whoever shot, was out or had to go', () => {
    fc.assert(
      fc.property(games, steps, ({ plan, turns, shooters }, taken) => {
        const log = groupOf(plan, turns, shooters);
        const past: unknown[] = [];
        for (const step of taken) {
          const { open } = log.book();
          if (!open) break;
          if (typeof step === 'string' && !whoPlays(log.book()).includes(step)) continue;
          past.push(seen(log.book()));
          if (typeof step === 'string') leave(log, step);
          else shoot(log, step);
        }
        for (const before of past.toReversed()) {
          undo(log);
          expect(seen(log.book())).toEqual(before);
        }
        expect(log.book().skipped).toBe(0);
      }),
      { numRuns: 100 },
    );
  });

  it('goes on after a crash with the right shooter at the right shot, wherever it was cut', () => {
    fc.assert(
      fc.property(games, steps, ({ plan, turns, shooters }, taken) => {
        const log = groupOf(plan, turns, shooters);
        for (const step of taken) {
          if (!log.book().open) break;
          if (typeof step === 'string') leave(log, step);
          else shoot(log, step);
          const again = readAgain(log);
          expect(seen(again)).toEqual(seen(log.book()));
          expect(stopNow(again)).toBe(stopNow(log.book()));
        }
      }),
      { numRuns: 30 },
    );
  });
});

/** Where the next shot is taken; null where the game is over. */
function stopNow(book: Book): number | null {
  return book.open && nextStop(book.open, othersIn(book, book.open));
}

function whoPlays({ open, waiting }: Book): string[] {
  return [...(open ? [open] : []), ...waiting.values()].map(({ shooter }) => shooter);
}

/** The log as a start of the app reads it: out of its stored text. */
function readAgain(log: Diary): Book {
  const rng = rngFromSeed(1);
  const ids = new Map(log.events.map((event) => [event.id, uuidV7(event.at, rng.bytes())]));
  const stored = JSON.stringify(log.events, (_, value: unknown) =>
    typeof value === 'string' ? (ids.get(value) ?? value) : value,
  );
  return foldParsed(EMPTY_BOOK, (JSON.parse(stored) as unknown[]).map(parseEvent));
}
