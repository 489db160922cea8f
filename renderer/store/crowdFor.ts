import type { Seconds } from '../basics/units.ts';
import { othersIn } from '../games/gameOn.ts';
import type { Solved } from '../games/solver.ts';
import type { Book, Round } from '../log/book.ts';
import type { LogEvent } from '../log/envelope.ts';
import { standingOf } from './liveChance.ts';
import type { Crowd } from './ports.ts';

/** The crowd of a round: it swells towards the next shot and answers the last one, the more it mattered the more. */
export interface RoundCrowd {
  /** Swells towards the round's next shot, in a book that holds the rest of its group. */
  expect(round: Round, book: Book): void;
  /** Answers what became durable, and turns to the next shot. */
  hear(before: Book, after: Book, events: readonly LogEvent[]): void;
  leave(): void;
}

/** Without a mark every shot matters the same. */
const USUAL_WEIGHT = 0.4;

export function crowdFor(crowd: Crowd, game: (round: Round) => Solved | null, gap: Seconds): RoundCrowd {
  const weightOf = (round: Round, book: Book): number => {
    const solved = game(round);
    if (!solved) return USUAL_WEIGHT;
    // Half the chance hanging on one shot is as loud as it gets.
    return Math.min(1, 0.2 + 1.6 * Math.abs(standingOf(solved, round, othersIn(book, round)).leverage));
  };
  return {
    expect: (round, book) => {
      if (round.pressure?.crowd && round.state === 'playing') crowd.swell(gap, weightOf(round, book));
    },
    hear: (before, after, events) => {
      for (const event of events) {
        if (event.type !== 'ShotTaken' && event.type !== 'StopCounted') continue;
        const was = before.open;
        if (was?.id !== event.body.round || !was.pressure?.crowd) continue;
        const made =
          event.type === 'ShotTaken' ? event.body.made : 2 * event.body.makes >= event.body.attempts;
        crowd.answer(made, weightOf(was, before));
        const next = after.open;
        const goesOn = next !== null && (next.id === was.id || before.waiting.has(next.id));
        if (goesOn) crowd.swell(gap, weightOf(next, after));
      }
    },
    leave: () => crowd.leave(),
  };
}
