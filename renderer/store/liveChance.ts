import type { Probability, Seconds } from '../basics/units.ts';
import type { Stop } from '../court/cards.ts';
import { clockFor } from '../games/clocks.ts';
import { wonBySecond } from '../games/duel.ts';
import { gameOn } from '../games/gameOn.ts';
import { reach } from '../games/reach.ts';
import type { Rule } from '../games/rule.ts';
import { solve, type Ability, type Solved, type Standing } from '../games/solver.ts';
import { turnResults } from '../games/turnResults.ts';
import type { Book, Round } from '../log/book.ts';
import { turnsOf } from '../log/roundCells.ts';
import { timeFor, type Pace } from '../stats/pace.ts';
import { clockPace } from './clockPace.ts';
import { abilityBefore } from './forecast.ts';
import { gameAbility } from './gameChances.ts';
import { recordOf } from './recordOf.ts';

/* What a round's mark or game is worth after every shot. */

/** What a round's game is solved from. It costs most, and nothing that is shot in the round moves it. */
export interface RoundGame {
  readonly rule: Rule<unknown>;
  readonly ability: Ability;
  /** How long the shooter takes over a shot, where the round is shot against a clock that it goes by. */
  readonly pace: Pace | null;
}

/** Whether a chance knows of time: no clock runs; by the shooter's own pace, or a usual one; or it leaves time aside. */
export type TimeTold = 'no clock' | 'own pace' | 'usual pace' | 'aside';

/**
 * What is known of a round's mark or game before its first shot; null for a round without either.
 *
 * @param others the other rounds of its group
 */
export function roundGame(
  book: Pick<Book, 'rounds'>,
  round: Round,
  others: readonly Round[] = [],
): RoundGame | null {
  const pace = paceBefore(book, round);
  const on = gameOn(round, others);
  if (!on) {
    const mark = round.pressure?.mark;
    if (!mark) return null;
    return { rule: reach(mark.makes, turnsOf(round).all), ability: abilityBefore(book, round), pace };
  }
  const opponent = others[0] ?? round;
  const second = on.plan.family === 'duel' && round.group?.place === 2;
  const of = (who: Round) => (stops: readonly Stop[]) => abilityBefore(book, who, stops);
  const [first, last] = second ? [opponent, round] : [round, opponent];
  const ability = gameAbility(on.plan, on, round.stops, of(first), of(last));
  return { rule: second ? wonBySecond(on.rule) : on.rule, ability, pace };
}

/** Solves a round's game, with the time there is for it after its latest shot. */
export function solvedNow({ rule, ability, pace }: RoundGame, round: Round): Solved {
  return solve(rule, ability, pace ? timeLeft(pace, round, rule.longest) : undefined);
}

/** Both steps in one. */
export function solvedGame(book: Book, round: Round, others: readonly Round[] = []): Solved | null {
  const game = roundGame(book, round, others);
  return game && solvedNow(game, round);
}

/** The standing of a round in its solved game, for its own shooter. */
export function standingOf(solved: Solved, round: Round, others: readonly Round[] = []): Standing {
  return solved.standing(gameOn(round, others)?.results ?? turnResults(round));
}

/** @param pace of the round's game */
export function timeTold(round: Round, pace: Pace | null): TimeTold {
  if (pace) return pace.own ? 'own pace' : 'usual pace';
  return clockFor(round) ? 'aside' : 'no clock';
}

/**
 * The pace a round against the clock is likely shot at; null where none tells how far the time goes, since others shoot in
 * between or each shot has a clock of its own. A mark is set without a word on time, so there it takes the shooter's own.
 */
function paceBefore(book: Pick<Book, 'rounds'>, round: Round): Pace | null {
  const alone = round.group === null || round.group.turns === 'game';
  if (clockFor(round)?.kind !== 'round' || !alone) return null;
  const pace = clockPace(recordOf(book, round.shooter, round.startedAt), round.date);
  return pace.own || round.pressure?.game ? pace : null;
}

/** Chances that time lasts, turn by turn of the game: those that are over had it, and an absent opponent takes none. */
function timeLeft(pace: Pace, round: Round, longest: number): Probability[] {
  const { used } = turnsOf(round);
  const left: Seconds = round.clockLeft ?? round.pressure?.clock?.seconds ?? 0;
  const last = round.entries.at(-1);
  // After a break play begins with a countdown and the ball in hand, as it did at first.
  const fresh = !last || (round.breaks?.at(-1) ?? -Infinity) > last.at;
  const duel = round.pressure?.game?.plan.family === 'duel';
  const own = duel ? Math.ceil(longest / 2) : longest;
  const turns = [
    ...Array.from({ length: used }, () => 1),
    ...timeFor(pace, left, own - used, fresh ? 'start' : 'shot'),
  ];
  return duel ? turns.flatMap((turn) => [turn, 1]) : turns;
}
