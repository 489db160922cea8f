import type { RoundId } from '../basics/ids.ts';
import { othersIn } from '../games/gameOn.ts';
import type { Solved, Standing } from '../games/solver.ts';
import type { Book, Round } from '../log/book.ts';
import { roundGame, solvedNow, standingOf, timeTold, type RoundGame, type TimeTold } from './liveChance.ts';

/** How a round stands, and whether its chance knows of time. */
export interface Outlook extends Standing {
  readonly time: TimeTold;
}

/** The games of the rounds on court, each solved as seldom as can be. */
export interface CourtGames {
  /** The game of a round; null without a mark or a game. */
  solved(round: Round): Solved | null;
  /** How it stands; null without a mark or a game. @param others the other rounds of its group */
  outlook(round: Round, others: readonly Round[]): Outlook | null;
}

interface Kept {
  readonly game: RoundGame | null;
  /** Where a clock runs every shot has its own solution; without one the first serves for all. */
  after: string | null;
  solved: Solved | null;
}

/** Shooters of the largest group. */
const MOST = 8;

/** @param book the book as it is durable */
export function courtGames(book: () => Book): CourtGames {
  const kept = new Map<RoundId, Kept>();

  function find(round: Round): Kept {
    let known = kept.get(round.id);
    if (!known) {
      if (kept.size >= MOST) kept.clear();
      const game = roundGame(book(), round, othersIn(book(), round));
      known = { game, after: null, solved: null };
      kept.set(round.id, known);
    }
    const after = known.game?.pace ? momentOf(round) : 'ever';
    if (known.game && known.after !== after) {
      known.solved = solvedNow(known.game, round);
      known.after = after;
    }
    return known;
  }

  return {
    solved: (round) => find(round).solved,
    outlook: (round, others) => {
      const { game, solved } = find(round);
      if (!game || !solved) return null;
      return { ...standingOf(solved, round, others), time: timeTold(round, game.pace) };
    },
  };
}

/** Another one after every entry, undo and break. */
function momentOf({ entries, breaks = [], clockLeft }: Round): string {
  return [entries.length, entries.at(-1)?.id, breaks.length, clockLeft].join(' ');
}
