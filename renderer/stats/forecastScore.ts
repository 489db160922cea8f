import type { RoundId } from '../basics/ids.ts';
import type { IsoDate, Probability } from '../basics/units.ts';
import type { Condition } from '../log/events.ts';

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

/** Marks of about the same chance, and how many of them were beaten. */
export interface ScoredMarks {
  /** Mean chance that was said. */
  readonly said: Probability;
  readonly marks: number;
  readonly beaten: number;
}

/** Whether the forecasts keep what they promise. */
export interface ForecastScore {
  /** The latest rounds, oldest first. */
  readonly rounds: readonly ScoredRound[];
  /** Rounds that ended within their span; below it; above it. */
  readonly inside: number;
  readonly below: number;
  readonly above: number;
  /** Rounds that were to be expected within, since makes are whole a little more than 80 %. */
  readonly expectedInside: number;
  /** By chance, the smallest first. */
  readonly marks: readonly ScoredMarks[];
  readonly reading: 'too few' | 'fits' | 'too sure' | 'too hopeful' | 'too gloomy';
}
