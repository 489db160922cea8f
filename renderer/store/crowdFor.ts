import type { Seconds } from '../basics/units.ts';
import type { Solved } from '../games/solver.ts';
import type { Book, Round } from '../log/book.ts';
import type { LogEvent } from '../log/envelope.ts';
import { standingOf } from './gameChances.ts';
import type { Crowd } from './ports.ts';

/** The crowd of a round: it swells towards the next shot and answers the last one, the more it mattered the more. */
export interface RoundCrowd {
  /** Swells towards the round's next shot. */
  expect(round: Round): void;
  /** Answers what became durable, and turns to the next shot. */
  hear(before: Book, after: Book, events: readonly LogEvent[]): void;
  leave(): void;
}

/** Without a mark every shot matters the same. */
const USUAL_WEIGHT = 0.4;

export function crowdFor(crowd: Crowd, game: (round: Round) => Solved | null, gap: Seconds): RoundCrowd {
  const weightOf = (round: Round): number => {
    const solved = game(round);
    if (!solved) return USUAL_WEIGHT;
    // Half the chance hanging on one shot is as loud as it gets.
    return Math.min(1, 0.2 + 1.6 * standingOf(solved, round).leverage);
  };
  return {
    expect: (round) => {
      if (round.pressure?.crowd && round.state === 'playing') crowd.swell(gap, weightOf(round));
    },
    hear: (before, after, events) => {
      for (const event of events) {
        if (event.type !== 'ShotTaken' && event.type !== 'StopCounted') continue;
        const was = before.open;
        if (was?.id !== event.body.round || !was.pressure?.crowd) continue;
        const made =
          event.type === 'ShotTaken' ? event.body.made : 2 * event.body.makes >= event.body.attempts;
        crowd.answer(made, weightOf(was));
        if (after.open?.id === was.id) crowd.swell(gap, weightOf(after.open));
      }
    },
    leave: () => crowd.leave(),
  };
}
