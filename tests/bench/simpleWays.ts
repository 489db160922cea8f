import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { present } from '../../renderer/basics/invariant.ts';
import type { Tally } from '../../renderer/log/roundCells.ts';
import { type DropEstimate, matchedDrop, simpleDrop, type Stratum } from '../../renderer/stats/drop.ts';
import { at } from '../../renderer/stats/matrix.ts';
import type { ModelData } from '../../renderer/stats/model/modelData.ts';
import { fitStatic } from '../stats/model/staticModel.ts';
import { type Scenario, SCENARIOS } from './modelCoverage.ts';
import type { Known } from './priorRecord.ts';

/*
 * Simpler ways to a drop than the model, and what they do with simulated shooters of known truth: all shots thrown together,
 * like with like by spot, the first day against the latest pressured round, and a plain logistic regression.
 */

const LEVEL = 0.9;

/** Sums over the simulated shooters, as those of the model. Points, but for {@link regression}. */
export interface Told {
  readonly bias: number;
  readonly rmse: number;
  /** Share of 90 % intervals that hold the truth. */
  readonly cover: number;
  /** Share of intervals that lie above 0. */
  readonly calls: number;
}

/** @param truth the mean drop over all weeks, and that of the last week */
export type Way = (
  data: ModelData,
  truth: { readonly mean: number; readonly last: number },
) => DropEstimate & { readonly truth: number };

export function scenarioOf(name: string): Scenario {
  return present(
    SCENARIOS.find((scenario) => scenario.name === name),
    name,
  );
}

/** Simulated shooters: the same ones as the model gets with the same seed. */
export function shootersOf({ record }: Scenario, count: number, seed: number): Known[] {
  return Array.from({ length: count }, (_, shooter) => record(rngFromSeed(seed + shooter)));
}

/** Asks a way for the drop of every shooter. */
export function told(shooters: readonly Known[], way: Way): Told {
  let [error, square, held, calls] = [0, 0, 0, 0];
  for (const { data, drops } of shooters) {
    const mean = drops.reduce((sum, drop) => sum + drop, 0) / drops.length;
    const { points, low, high, truth } = way(data, { mean, last: drops.at(-1) ?? NaN });
    error += points - truth;
    square += (points - truth) ** 2;
    if (low <= truth && truth <= high) held += 1;
    if (low > 0) calls += 1;
  }
  return {
    bias: error / shooters.length,
    rmse: Math.sqrt(square / shooters.length),
    cover: held / shooters.length,
    calls: calls / shooters.length,
  };
}

/** Makes of attempts of some cells. */
function tally({ cells }: ModelData, wanted: readonly number[]): Tally {
  let [makes, attempts] = [0, 0];
  for (const cell of wanted) {
    makes += at(cells.makes, cell);
    attempts += at(cells.attempts, cell);
  }
  return { makes, attempts };
}

/** The cells of one condition. */
function cellsOf({ cells }: ModelData, pressured: 0 | 1): number[] {
  return [...Array(cells.count).keys()].filter((cell) => cells.pressured[cell] === pressured);
}

/** All shots thrown together. */
export const together: Way = (data, { mean }) => ({
  ...present(simpleDrop(tally(data, cellsOf(data, 0)), tally(data, cellsOf(data, 1)), LEVEL), 'a drop'),
  truth: mean,
});

/** Spot by spot. */
export const likeWithLike: Way = (data, { mean }) => {
  const strata = data.places.map((_, place): Stratum => {
    const here = (cell: number) => data.cells.place[cell] === place;
    return {
      relaxed: tally(data, cellsOf(data, 0).filter(here)),
      pressured: tally(data, cellsOf(data, 1).filter(here)),
    };
  });
  return { ...present(matchedDrop(strata, LEVEL), 'a drop'), truth: mean };
};

/** The first day against the latest pressured round, for the drop of the last week. */
export const dayOne: Way = (data, { last }) => {
  const first = cellsOf(data, 0).filter((cell) => cell < at(data.sessions.start, 1));
  // A round has a cell for each place.
  const latest = cellsOf(data, 1).slice(-data.places.length);
  return { ...present(simpleDrop(tally(data, first), tally(data, latest), LEVEL), 'a drop'), truth: last };
};

/** Spots, order and a straight line over the weeks, days all alike. In log-odds, which are 0 where the drop is. */
export const regression: Way = (data) => {
  const { estimate, se } = fitStatic(data, 1e-4);
  const lost = -(estimate['pressured'] ?? NaN);
  const reach = 1.6448536 * (se['pressured'] ?? NaN);
  return { points: lost, low: lost - reach, high: lost + reach, truth: 0 };
};
