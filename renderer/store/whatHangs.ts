import type { ShooterId } from '../basics/ids.ts';
import { oncePerList } from '../basics/remembered.ts';
import { partOf } from '../basics/steps.ts';
import type { Probability } from '../basics/units.ts';
import { gameOn, othersIn, sharesGame } from '../games/gameOn.ts';
import { worthOf } from '../games/ruleOf.ts';
import { turnResults } from '../games/turnResults.ts';
import { EMPTY_BOOK, type Book, type Round } from '../log/book.ts';
import { stopAt } from '../log/roundCells.ts';
import { type CoinBall, doubleBallDrop, type DoubleBallDrop, LEAST_DOUBLES } from '../stats/doubleBall.ts';
import { cellKey } from '../stats/drop.ts';
import { oldestThatCounts } from '../stats/lately.ts';
import {
  LEAST_LEVERAGE,
  type LeverageDrop,
  leverageDropInSteps,
  type LeverageShot,
  MOST_LEVERAGE,
} from '../stats/leverage.ts';
import { roundGame, solvedNow } from './liveChance.ts';

/*
 * What one shooter loses when much hangs on the shot. The fitting worker works it out: what hung on each of thousands of
 * shots takes about a second at first.
 */

/** Plain values only, so that a worker can hand it over. */
export interface WhatHangs {
  /** Single shots in rounds with a mark or a game, while it was open. */
  readonly leverage: {
    readonly shots: number;
    readonly rounds: number;
    /** Null where there are too few ({@link LEAST_LEVERAGE}), or the same hung on all of them. */
    readonly drop: LeverageDrop | null;
  };
  /** Balls of racks in which a coin drew the double ones. */
  readonly doubles: {
    readonly singles: number;
    readonly doubles: number;
    /** Null below {@link LEAST_DOUBLES}. */
    readonly drop: DoubleBallDrop | null;
  };
}

/** Of the work, what hung on each shot is this share; the fit is the rest. */
const ROWS_SHARE = 0.7;
/** Less hangs only on a shot in a game that is decided. */
const DECIDED = 1e-9;

/**
 * @param rounds the shooter's, and those of whoever they had a duel with; a duel whose other half is missing is left out
 * @yields the share of the work that is done, 0 to 1
 */
export function* whatHangsInSteps(
  rounds: Book['rounds'],
  shooter: ShooterId,
): Generator<Probability, WhatHangs> {
  const own = [...rounds.values()]
    .filter((round) => round.shooter === shooter && round.state === 'ended')
    .toSorted((a, b) => b.startedAt - a.startedAt);
  const shots: LeverageShot[] = [];
  for (const round of own) {
    if (shots.length >= MOST_LEVERAGE) break;
    const found = hangingShots(rounds, round);
    if (found.length === 0) continue;
    shots.push(...found);
    yield (ROWS_SHARE * Math.min(MOST_LEVERAGE, shots.length)) / MOST_LEVERAGE;
  }
  const played = new Set(shots.map(({ round }) => round)).size;
  const enough = shots.length >= LEAST_LEVERAGE.shots && played >= LEAST_LEVERAGE.rounds;
  const drop = enough ? yield* partOf(leverageDropInSteps(shots), ROWS_SHARE, 1) : null;
  const balls = own.flatMap(coinBalls);
  const doubles = balls.filter(({ double }) => double).length;
  return {
    leverage: { shots: shots.length, rounds: played, drop },
    doubles: {
      singles: balls.length - doubles,
      doubles,
      drop: doubles < LEAST_DOUBLES ? null : doubleBallDrop(balls),
    },
  };
}

/**
 * The single shots of a pressured round with a mark or a game, in the order they were taken, each with what hung on it and
 * how likely it was to go in: by the ability, and the pace where there was a clock, as they stood before the round. Its own
 * makes say where the game stood, and nothing of the shooter. Shots after it was decided are left out.
 *
 * @param rounds with everything that was in the book before it, and the other round of a duel
 */
export function hangingShots(rounds: Book['rounds'], round: Round): readonly LeverageShot[] {
  const { pressure, entry } = round;
  if (entry !== 'each-shot' || !(pressure?.mark ?? pressure?.game)) return [];
  const others = rivalsIn(rounds, round);
  const shooters = new Set([round, ...others].map(({ shooter }) => shooter));
  const oldest = oldestThatCounts(round.date);
  const before = [...rounds.values()].filter(
    ({ shooter, date, startedAt }) => shooters.has(shooter) && date >= oldest && startedAt < round.startedAt,
  );
  return shotsOf([round, ...others, ...before]);
}

/** Worked out again only where something changed that came before, which after one more round is nowhere. */
const shotsOf = oncePerList((known: readonly Round[]): readonly LeverageShot[] => {
  const [round] = known;
  if (!round) return [];
  const rounds = new Map(known.map((one) => [one.id, one]));
  const others = rivalsIn(rounds, round);
  if (sharesGame(round) && others.length === 0) return [];
  const game = roundGame({ rounds }, round, others);
  if (!game) return [];
  const solved = solvedNow(game, { ...round, entries: [], clockLeft: null, breaks: [] });
  const results = gameOn(round, others)?.results ?? turnResults(round);
  const duel = round.pressure?.game?.plan.family === 'duel';
  const behind = sharesGame(round) && round.group?.place === 2 ? 1 : 0;
  return round.entries.flatMap((entry, own): LeverageShot[] => {
    if (entry.kind !== 'shot') return [];
    const turn = duel ? 2 * own + behind : own;
    const { leverage = 0, rate = 0 } = solved.foreseen(results.slice(0, turn)) ?? {};
    if (leverage < DECIDED) return [];
    const { spot, shot } = stopAt(round, entry.stop);
    return [{ round: round.id, place: cellKey(spot, shot), made: entry.made, leverage, rate }];
  });
});

function rivalsIn(rounds: Book['rounds'], round: Round): Round[] {
  return sharesGame(round) ? othersIn({ ...EMPTY_BOOK, rounds }, round) : [];
}

/** The balls of a round of racks in which a coin drew the double ones; alike are those of one spot and place in the rack. */
export function coinBalls({ pressure, stops, entries }: Round): CoinBall[] {
  const plan = pressure?.game?.plan;
  if (plan?.family !== 'racks' || plan.double !== 'coin') return [];
  const worth = worthOf(stops, plan.double, pressure?.seed ?? 0);
  const taken = stops.map(() => 0);
  return entries.flatMap((entry, ball): CoinBall[] => {
    const place = taken[entry.stop] ?? 0;
    taken[entry.stop] = place + 1;
    if (entry.kind !== 'shot') return [];
    const { spot, shot } = stopAt({ stops }, entry.stop);
    const stop = `${cellKey(spot, shot)} ${place + 1}`;
    return [{ stop, made: entry.made, double: worth[ball] === 2 }];
  });
}
