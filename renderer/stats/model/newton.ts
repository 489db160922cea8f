import { at, cholesky, logDeterminant, type Matrix } from '../matrix.ts';
import { backToDays, backToWeeks, solveShared } from './backwards.ts';
import { dayPass, type DayRoom, dayRoom } from './dayPass.ts';
import type { Design } from './design.ts';
import type { Spreads } from './priors.ts';
import { largest, moved, priorState, type State, weekShifts } from './state.ts';
import { type WeekFactors, weekPass } from './weekPass.ts';

/** The most likely state for fixed spreads, and the curvature there. */
export interface Mode {
  readonly spreads: Spreads;
  readonly state: State;
  /** ln p(makes | state) + ln p(state | spreads), binomial coefficients and powers of 2π left out. */
  readonly objective: number;
  /** ln |H|, H = −Hessian over all unknowns. */
  readonly logDeterminant: number;
  /** Laplace's ln p(makes | spreads): objective + ½ ln |Q| − ½ ln |H|, Q = prior precision. */
  readonly logEvidence: number;
  /** Largest number in the last step. */
  readonly lastStep: number;
  readonly factors: Factors;
}

/** H factored as days, then weeks, then shared unknowns. */
export interface Factors {
  /** Lower triangle. */
  readonly shared: Matrix;
  readonly weeks: WeekFactors;
  /** Belongs to the room of the fitter and holds only until its next fit. */
  readonly days: DayRoom;
}

/** Steps below this change a make rate by less than 0.03 points, and the next would be a thousand times smaller. */
const CLOSE_ENOUGH = 1e-3;
const MOST_STEPS = 60;

/** Fits one design for one set of spreads after another, in the same room. */
export interface Fitter {
  /**
   * @param from where to begin; the middle of the priors by default
   * @param tolerance the last step taken is at most this, log-odds
   */
  fit(spreads: Spreads, from?: State, tolerance?: number): Mode;
}

/**
 * Newton's method with the block-arrow elimination of dayPass.ts and weekPass.ts. The objective is concave; a step that
 * does not rise is halved. Costs cells · row² + sessions · base² + weeks · shared² for each step: linear in weeks.
 */
export function fitterOf(design: Design): Fitter {
  const room = dayRoom(design);
  return {
    fit: (spreads, from = priorState(design), tolerance = CLOSE_ENOUGH) => {
      let state = from;
      let here = newtonStep(design, spreads, state, room);
      for (let round = 0; round < MOST_STEPS && largest(here.step) > tolerance; round += 1) {
        let share = 1;
        let next = moved(state, here.step, share);
        let there = newtonStep(design, spreads, next, room);
        // A rise lost in rounding is no fall.
        const least = here.objective - 1e-10 * Math.abs(here.objective);
        while (!(there.objective >= least) && share > 1e-6) {
          share /= 2;
          next = moved(state, here.step, share);
          there = newtonStep(design, spreads, next, room);
        }
        state = next;
        here = there;
      }
      // The last step is so small that the objective is a parabola along it: its rise is half of gᵀ H⁻¹ g.
      const objective = here.objective + here.decrement / 2;
      return {
        spreads,
        state: moved(state, here.step, 1),
        objective,
        logDeterminant: here.logDeterminant,
        logEvidence: objective + here.priorLogDeterminant / 2 - here.logDeterminant / 2,
        lastStep: largest(here.step),
        factors: here.factors,
      };
    },
  };
}

interface NewtonStep {
  readonly objective: number;
  readonly logDeterminant: number;
  readonly priorLogDeterminant: number;
  /** gᵀ H⁻¹ g. */
  readonly decrement: number;
  readonly step: State;
  readonly factors: Factors;
}

/** @param rates make rates of the cells for the gradient, where they are not to be the state's own */
export function newtonStep(
  design: Design,
  spreads: Spreads,
  state: State,
  room: DayRoom,
  rates: Float64Array | null = null,
): NewtonStep {
  const shifts = weekShifts(design, state.shared, state.weeks);
  const days = dayPass(design, spreads, state, shifts, room, rates);
  const weeks = weekPass(design, spreads, state, room);
  const lower = cholesky({ size: design.columns.length, values: weeks.hessian });
  const { solution, half } = solveShared(lower, weeks.gradient);
  const weekStep = backToWeeks(weeks.factors, solution, null);
  const dayStep = backToDays(design, room, solution, weekStep, null);
  let decrement = days.decrement + weeks.decrement;
  for (let i = 0; i < half.length; i += 1) decrement += at(half, i) ** 2;
  const dayPriors = -2 * design.sessions.count * Math.log(spreads.day * spreads.dayPressure);
  return {
    objective: days.objective + weeks.objective,
    logDeterminant: days.logDeterminant + weeks.logDeterminant + logDeterminant(lower),
    priorLogDeterminant: weeks.priorLogDeterminant + dayPriors,
    decrement,
    step: { shared: solution, weeks: weekStep, days: dayStep },
    factors: { shared: lower, weeks: weeks.factors, days: room },
  };
}
