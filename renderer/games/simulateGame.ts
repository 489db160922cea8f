import type { Rng } from '../basics/chance.ts';
import type { Probability } from '../basics/units.ts';
import type { Rule, TurnResult } from './rule.ts';
import type { Ability, Solved, TimeLeft } from './solver.ts';

/** One turn of a game that played itself. */
export interface CourseStep {
  /** Which of the game's shots it was. */
  readonly shot: number;
  /** Chance of winning before it. */
  readonly chance: Probability;
  /** What hung on it: the chance after a make minus the chance after a miss. */
  readonly leverage: Probability;
  readonly made: boolean;
}

/** A game from its first shot to its end. */
export interface Course {
  readonly steps: readonly CourseStep[];
  readonly won: boolean;
  /** The clock ended it. */
  readonly timeUp: boolean;
}

interface Playing {
  readonly rule: Rule<unknown>;
  readonly solved: Solved;
  readonly ability: Ability;
  readonly time: TimeLeft | undefined;
}

/**
 * Plays a game through with a simulated shooter: one of the possible days is drawn, then every shot, and before each
 * whether there is still time for it. Over many plays as many are won as the solver says.
 */
export function simulateGame({ rule, solved, ability, time }: Playing, rng: Rng): Course {
  const rates = ability.rates[drawDay(ability.weights, rng)] ?? [];
  const steps: CourseStep[] = [];
  const results: TurnResult[] = [];
  let state = rule.start;
  let timeUp = false;
  while (!rule.finished(state)) {
    timeUp = time !== undefined && !rng.chance(time[results.length] ?? 1);
    if (timeUp) break;
    const shot = rule.shot(state);
    const made = rng.chance(rates[shot] ?? 0);
    steps.push({ shot, ...solved.standing(results), made });
    results.push(made ? 'make' : 'miss');
    state = rule.step(state, made);
  }
  return { steps, won: rule.won(state), timeUp };
}

function drawDay(weights: readonly number[], rng: Rng): number {
  let left = rng.next();
  const day = weights.findIndex((weight) => {
    left -= weight;
    return left < 0;
  });
  return day === -1 ? weights.length - 1 : day;
}
