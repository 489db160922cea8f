import type { Rng } from '../../renderer/basics/chance.ts';
import { addDays } from '../../renderer/basics/days.ts';
import { present } from '../../renderer/basics/invariant.ts';
import type { Stop } from '../../renderer/court/cards.ts';
import { worthOf } from '../../renderer/games/ruleOf.ts';
import type { TurnResult } from '../../renderer/games/rule.ts';
import type { Round } from '../../renderer/log/book.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import type { PressureSetup } from '../../renderer/pressure/ingredients.ts';
import { roundGame, solvedNow } from '../../renderer/store/liveChance.ts';
import { PRESSURE } from '../log/diary.ts';
import { roundOf, three } from '../stats/rounds.ts';

/* Rounds of games of a simulated shooter who makes half of the shots, but for what stakes and good and bad rounds do. */

/** Five racks of five from the top. */
export const RACKS: readonly Stop[] = Array.from({ length: 5 }, () => ({
  spot: 'top',
  shot: 'catch',
  attempts: 5,
}));

/** What is true of the shooter, in log-odds. */
export interface Nerves {
  /** What each 0.1 of leverage takes off. */
  readonly perTenth: number;
  /** What a double ball takes off. */
  readonly perDouble: number;
  /** Standard deviation of good and bad rounds. */
  readonly roundSd: number;
}

export const CALM: Nerves = { perTenth: 0, perDouble: 0, roundSd: 0.2 };

/** A hundred relaxed shots of which half went in, then so many rounds of a game, one a day. */
export function seasonOfGames(plan: GamePlan, rounds: number, nerves: Nerves, rng: Rng): Map<string, Round> {
  const record = new Map<string, Round>();
  const first = { ...roundOf('relaxed', [three('top', 50, 100)], { date: '2026-03-01' }), id: 'first' };
  record.set(first.id, first);
  for (let day = 1; day <= rounds; day += 1) {
    const start = gameRound(plan, '', {
      id: `game ${day}`,
      date: addDays('2026-03-01', day),
      startedAt: 86_400_000 * day,
      setup: { seed: rng.below(1_000_000) },
    });
    record.set(start.id, { ...start, entries: playedBy(nerves, record, start, rng) });
  }
  return record;
}

/** An ended round of a game on racks from the top, with these makes (`o`) and misses (`x`). */
export function gameRound(
  plan: GamePlan,
  shots: string,
  { setup = {}, stops = RACKS, ...change }: Partial<Round> & { readonly setup?: Partial<PressureSetup> } = {},
): Round {
  const round = roundOf('pressured', []);
  return {
    ...round,
    entry: 'each-shot',
    stops,
    entries: entriesOf(
      stops,
      shots.split('').map((shot) => shot === 'o'),
    ),
    pressure: { ...PRESSURE, mark: null, game: { name: 'A game', plan, chance: 0.5 }, ...setup },
    ...change,
  };
}

function entriesOf(stops: readonly Stop[], made: readonly boolean[]): Round['entries'] {
  const turns = stops.flatMap(({ attempts }, stop) => Array.from({ length: attempts }, () => stop));
  return made.map((one, at) => ({
    kind: 'shot',
    id: `shot ${at}`,
    at: 7000 * at,
    stop: turns[at % turns.length] ?? 0,
    made: one,
    side: null,
  }));
}

/** The shots of a round, each the worse the more hangs on it. */
function playedBy(nerves: Nerves, record: Map<string, Round>, round: Round, rng: Rng): Round['entries'] {
  const game = present(roundGame({ rounds: record }, round), 'a game');
  const solved = solvedNow(game, round);
  const plan = round.pressure?.game?.plan;
  const worth = plan?.family === 'racks' ? worthOf(round.stops, plan.double, round.pressure?.seed ?? 0) : [];
  const luck = nerves.roundSd * rng.normal();
  const results: TurnResult[] = [];
  for (let next = solved.foreseen(results); next; next = solved.foreseen(results)) {
    const doubled = worth[results.length] === 2 ? nerves.perDouble : 0;
    const odds = luck - doubled - nerves.perTenth * 10 * (next.leverage - 0.15);
    results.push(rng.chance(1 / (1 + Math.exp(-odds))) ? 'make' : 'miss');
  }
  return entriesOf(
    round.stops,
    results.map((result) => result === 'make'),
  );
}
