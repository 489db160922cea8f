import { isoDateAt } from '../basics/days.ts';
import type { EpochMs, IsoDate, Probability } from '../basics/units.ts';
import type { Stop } from '../court/cards.ts';
import { turnResults } from '../games/played.ts';
import { reach } from '../games/reach.ts';
import { solve, type Ability, type Solved, type Standing } from '../games/solver.ts';
import type { Moment } from '../log/begin.ts';
import type { Book, Round } from '../log/book.ts';
import { roundCells, turnsOf } from '../log/roundCells.ts';
import { abilityOn, chanceOfAtLeast, chooseMark } from '../stats/ability.ts';
import { cellKey } from '../stats/drop.ts';

/* What the shooter's own record says of the next pressured round. */

/**
 * Make rates on a card under pressure on one day, from every round of it or of an earlier day that was in the book at
 * one moment: what is brought in later does not move a game that is under way.
 */
function pressuredAbility(
  book: Book,
  shooter: string,
  stops: readonly Stop[],
  on: IsoDate,
  before: EpochMs = Infinity,
): Ability {
  const rounds = [...book.rounds.values()].filter(
    (round) => round.shooter === shooter && round.startedAt < before,
  );
  return abilityOn(rounds, 'pressured', stops, on);
}

/** A round's game, solved; ask it for the standing after every shot. Null for a round without a mark. */
export function solvedGame(book: Book, round: Round): Solved | null {
  const mark = round.pressure?.mark;
  if (!mark) return null;
  const ability = pressuredAbility(book, round.shooter, round.stops, round.date, round.startedAt);
  return solve(reach(mark.makes, turnsOf(round).all), ability);
}

/** The standing of a round in its solved game. */
export function standingOf(game: Solved, round: Round): Standing {
  return game.standing(turnResults(round));
}

/** "about 46 in 100", rounded to what a forecast can bear; never 0 or 100. */
export function inHundred(chance: Probability): number {
  return Math.min(99, Math.max(1, Math.round(chance * 100)));
}

/** The marks of a card for one shooter. */
export interface Marks {
  /** Shots on the record from the spots of this card, taken the same way. */
  readonly shots: number;
  /** Chance of at least so many makes. */
  chance(makes: number): Probability;
  /** The makes whose chance lies nearest to the wanted one. */
  nearest(wanted: Probability): number;
}

/** What each mark on this card is worth for a pressured round that the shooter starts now. */
export function marksFor(
  book: Book,
  shooter: string,
  stops: readonly Stop[],
  now: Pick<Moment, 'at' | 'zone'>,
): Marks {
  const ability = pressuredAbility(book, shooter, stops, isoDateAt(now.at, now.zone));
  return {
    shots: shotsOnRecord(book, shooter, stops),
    chance: (makes) => chanceOfAtLeast(ability, makes),
    nearest: (wanted) => chooseMark(ability, wanted).makes,
  };
}

function shotsOnRecord(book: Book, shooter: string, stops: readonly Stop[]): number {
  const onCard = new Set(stops.map(({ spot, shot }) => cellKey(spot, shot)));
  let shots = 0;
  for (const round of book.rounds.values()) {
    if (round.shooter !== shooter) continue;
    for (const cell of roundCells(round)) {
      if (onCard.has(cellKey(cell.spot, cell.shot))) shots += cell.attempts;
    }
  }
  return shots;
}
