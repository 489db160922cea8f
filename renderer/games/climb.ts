import { invariant, present } from '../basics/invariant.ts';
import type { Rule } from './rule.ts';

/** One step: so many makes of so many shots lead on. */
export interface ClimbStep {
  readonly makes: number;
  readonly shots: number;
}

export interface ClimbState {
  readonly step: number;
  /** Shots and makes on this step. */
  readonly taken: number;
  readonly made: number;
  readonly all: number;
}

/**
 * Climb step by step: m of n leads one step up, falling short sets the climber back. Won on top.
 *
 * @param back steps lost by falling short
 * @param most shots in all
 * @throws InvariantError where a step cannot be climbed, or the top cannot be reached in so many shots
 */
export function climb(steps: readonly ClimbStep[], back: number, most: number): Rule<ClimbState> {
  invariant(steps.length >= 1, 'a step to climb');
  invariant(
    steps.every(({ makes, shots }) => makes >= 1 && makes <= shots),
    'steps that can be climbed',
  );
  invariant(back >= 0, 'no step gained by falling short');
  const least = steps.reduce((sum, { makes }) => sum + makes, 0);
  invariant(most >= least, `at least ${least} shots to the top`);
  const at = (step: number): ClimbStep => present(steps[step], `step ${step}`);
  return {
    start: { step: 0, taken: 0, made: 0, all: 0 },
    step: ({ step, taken, made, all }, goesIn) => {
      const makes = made + (goesIn ? 1 : 0);
      const { makes: needed, shots } = at(step);
      const gone = { taken: 0, made: 0, all: all + 1 };
      if (makes === needed) return { step: step + 1, ...gone };
      // Once it cannot be reached any more the step is lost, whatever is left of it.
      if (needed - makes > shots - taken - 1) return { step: Math.max(0, step - back), ...gone };
      return { step, taken: taken + 1, made: makes, all: all + 1 };
    },
    finished: ({ step, all }) => step === steps.length || all === most,
    won: ({ step }) => step === steps.length,
    shot: ({ step }) => step,
    key: ({ step, taken, made }) => `${step} ${taken} ${made}`,
    longest: most,
  };
}
