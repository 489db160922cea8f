import { chancesOff } from './modelChances.ts';
import { type Honesty, honestyOf, type Scenario, SCENARIOS } from './modelCoverage.ts';
import type { Outcome } from './outcome.ts';
import { likeWithLike, shootersOf, type Told, told, together } from './simpleWays.ts';

/*
 * How honest the choke index is, by simulated shooters of known truth, beside simpler ways with the same shooters. All of it
 * is told as a distance from what should be, the smaller the better.
 */

const SEED = 1000;
/** Shooters drawn from the prior; a share of 90 % of them has an error of 1.5 points. */
const FROM_PRIOR = 400;
/** In every other scenario; a bias has an error of about 0.15 points, a share of 5 % one of 1.5. */
const OTHERS = 200;

interface Measured {
  readonly scenario: Scenario;
  readonly shooters: number;
  readonly model: Honesty;
  readonly together: Told;
  readonly likeWithLike: Told;
}

/** The benchmark `modelCoverage`. Takes minutes. */
export function modelCoverageOutcomes(): Outcome[] {
  console.log(
    '  90 % intervals of the choke index: cover of the drop, of the change; bias, RMSE in points; calls',
  );
  return SCENARIOS.flatMap((scenario, at) => {
    const measured = measure(scenario, at === 0 ? FROM_PRIOR : OTHERS);
    return at === 0 ? fromPrior(measured) : played(measured);
  });
}

function measure(scenario: Scenario, count: number): Measured {
  const model = honestyOf(scenario, count, SEED);
  const percent = (share: number): string => `${(100 * share).toFixed(1)} %`.padEnd(8);
  console.log(
    `  ${scenario.name.padEnd(50)}${percent(model.cover)}${percent(model.changeCover)}` +
      `${model.bias.toFixed(2).padEnd(7)}${model.rmse.toFixed(2).padEnd(7)}${percent(model.calls)}`,
  );
  const shooters = shootersOf(scenario, count, SEED);
  return {
    scenario,
    shooters: count,
    model,
    together: told(shooters, together),
    likeWithLike: told(shooters, likeWithLike),
  };
}

function fromPrior(measured: Measured): Outcome[] {
  const { scenario, shooters, model } = measured;
  const off = ({ cover }: { readonly cover: number }): number => 100 * Math.abs(cover - 0.9);
  const chances = chancesOff(shootersOf(scenario, shooters, SEED));
  return [
    {
      what: `coverage off 90 %: ${scenario.name}`,
      unit: 'points',
      figure: off(model),
      rival: { what: 'like with like', figure: off(measured.likeWithLike) },
      n: String(shooters),
      limit: { on: 'figure', most: 3, by: 'agreed' },
    },
    bias(measured),
    {
      what: `stated chance of a drop, off the share that had one`,
      unit: 'points',
      figure: chances.model,
      rival: { what: 'like with like', figure: chances.likeWithLike },
      n: String(shooters),
      // Chance alone gives about 3.
      limit: { on: 'figure', most: 8, by: 'own' },
    },
  ];
}

function played(measured: Measured): Outcome[] {
  const { scenario, shooters, model } = measured;
  const outcomes = [bias(measured)];
  if (scenario.name.endsWith('drop 0')) {
    outcomes.push({
      what: `false calls of a drop: ${scenario.name}`,
      unit: '%',
      figure: 100 * model.calls,
      rival: { what: 'like with like', figure: 100 * measured.likeWithLike.calls },
      n: String(shooters),
      limit: { on: 'figure', most: 8, by: 'agreed' },
    });
  }
  if (scenario.name.includes('drifts')) {
    outcomes.push({
      what: `change from first to last week not covered: ${scenario.name}`,
      unit: '%',
      figure: 100 * (1 - model.changeCover),
      rival: { what: 'as a 90 % interval says', figure: 10 },
      n: String(shooters),
      limit: { on: 'figure', most: 15, by: 'agreed' },
    });
  }
  return outcomes;
}

function bias({ scenario, shooters, model, together: plain }: Measured): Outcome {
  return {
    what: `bias of the drop: ${scenario.name}`,
    unit: 'points',
    figure: Math.abs(model.bias),
    rival: { what: 'all shots thrown together', figure: Math.abs(plain.bias) },
    n: String(shooters),
    limit: { on: 'figure', most: 0.7, by: 'agreed' },
  };
}
