import type { RoundId } from '../basics/ids.ts';
import { finish } from '../basics/steps.ts';
import type { IsoDate, Probability } from '../basics/units.ts';
import { attemptsOn } from '../court/cards.ts';
import type { Round } from '../log/book.ts';
import type { Condition } from '../log/events.ts';
import { roundTally, type Tally } from '../log/roundCells.ts';
import { abilityFromDays, forecast, type Forecast } from './ability.ts';
import {
  type AgainstRival,
  againstRival,
  type Calibration,
  calibrationOf,
  type Outcome,
} from './outcomes.ts';
import type { DayTally } from './dayTallies.ts';
import { cellKey } from './drop.ts';
import { RoundsByDay } from './roundsByDay.ts';
import { type MarkOutcome, markOutcome, type ScoredMarks, scoreMarks } from './scoredMarks.ts';

export type { ScoredMarks } from './scoredMarks.ts';

/** One forecast beside what came of it. */
export interface ScoredRound {
  readonly round: RoundId;
  readonly date: IsoDate;
  readonly condition: Condition;
  readonly attempts: number;
  /** Makes that were expected, and the span of the middle 80 %. */
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly makes: number;
}

/** Whether the forecasts keep what they promise. */
export interface ForecastScore extends Calibration {
  /** The latest rounds, oldest first. */
  readonly rounds: readonly ScoredRound[];
  /** Rounds in the same stretch that were not shot to the end, or hold too many shots for one round. */
  readonly leftOut: number;
  /** Beside a plain guess: every shot goes in as often as it did in the last half year, pressure or not. Null without a round. */
  readonly plain: AgainstRival | null;
  /** The latest marks by their chance as it was said before the round, the smallest first. */
  readonly marks: readonly ScoredMarks[];
  /** The same of the latest games. */
  readonly games: readonly ScoredMarks[];
}

export interface ScoreOptions {
  /** How many of the latest rounds, of the latest marks and of the latest games are looked at. */
  readonly latest?: number;
  /** What came of a round's game, null where nobody can say; games are not known here. */
  readonly gameOutcome?: (round: Round) => MarkOutcome | null;
}

/** So many of the latest rounds are scored. */
export const LATEST_SCORED = 60;
/** A file may call a whole month one round; nobody forecast that. */
const MOST_ATTEMPTS = 300;

/**
 * Scores the forecasts for one shooter's latest rounds of both conditions: each is worked out anew from the rounds before
 * it alone ({@link RoundsByDay.talliesBefore}), as the app does before a round. Only rounds whose whole card was shot can
 * be compared with a forecast for the card.
 */
export function forecastScore(rounds: readonly Round[], options: ScoreOptions = {}): ForecastScore {
  return finish(forecastScoreInSteps(rounds, options));
}

/**
 * The same in short steps, one for each forecast.
 *
 * @yields the share of the work that is done, 0 to 1
 */
export function* forecastScoreInSteps(
  rounds: readonly Round[],
  { latest = LATEST_SCORED, gameOutcome = () => null }: ScoreOptions = {},
): Generator<Probability, ForecastScore> {
  const byDay = new RoundsByDay(rounds);
  const { rounds: played, passedOver } = byDay.latest(latest, shotToTheEnd);
  const scored: ScoredRound[] = [];
  const outcomes: Outcome[] = [];
  const plain: Outcome[] = [];
  for (const round of played) {
    yield scored.length / played.length;
    const days = byDay.talliesBefore(round);
    const said = forecast(abilityFromDays(days, round.condition, round.stops, round.date));
    const { makes, attempts } = roundTally(round);
    const { id, date, condition } = round;
    scored.push({ round: id, date, condition, attempts, mean: said.mean, ...said.range, makes });
    outcomes.push(outcomeOf(round, said, makes));
    plain.push(outcomeOf(round, plainForecast(days, round), makes));
  }
  const scoresOf = (came: (round: Round) => MarkOutcome | null): ScoredMarks[] => {
    const latestOnes = byDay.latest(latest, (round) => came(round) !== null).rounds;
    return scoreMarks(latestOnes.flatMap((round) => came(round) ?? []));
  };
  return {
    rounds: scored,
    leftOut: passedOver,
    ...calibrationOf(outcomes),
    plain: againstRival(outcomes, plain),
    marks: scoresOf(markOutcome),
    games: scoresOf(gameOutcome),
  };
}

function shotToTheEnd({ state, ending, stops, entries }: Round): boolean {
  if (state !== 'ended' || ending !== 'played-out') return false;
  const all = attemptsOn(stops);
  return all <= MOST_ATTEMPTS && roundTally({ entries }).attempts === all;
}

function outcomeOf({ date }: Round, { chances, range }: Forecast, makes: number): Outcome {
  return { date, chances, ...range, makes };
}

/** What anyone could say from the bare count, a make and a miss added so that nothing is sure. */
function plainForecast(days: readonly DayTally[], { stops }: Round): Forecast {
  const counts = new Map<string, Tally>();
  for (const { cells } of days) {
    for (const { spot, shot, makes, attempts } of cells) {
      const key = cellKey(spot, shot);
      const before = counts.get(key) ?? { makes: 0, attempts: 0 };
      counts.set(key, { makes: before.makes + makes, attempts: before.attempts + attempts });
    }
  }
  const rates = stops.flatMap(({ spot, shot, attempts }) => {
    const count = counts.get(cellKey(spot, shot)) ?? { makes: 0, attempts: 0 };
    return Array.from({ length: attempts }, () => (count.makes + 1) / (count.attempts + 2));
  });
  return forecast({ weights: [1], rates: [rates] });
}
