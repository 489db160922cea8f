import { fileURLToPath } from 'node:url';

import { type Rng, rngFromSeed } from '../../renderer/basics/chance.ts';
import { type DropEstimate, matchedDrop, simpleDrop, type Stratum } from '../../renderer/stats/drop.ts';
import { zFor } from '../../renderer/stats/proportion.ts';
import type { Outcome } from './outcome.ts';

/*
 * How often the interval of a drop holds the truth, by simulation, and how wide it is: the matched drop against two
 * rivals, the normal interval of the same weighted difference, and all shots thrown together.
 */

const LEVEL = 0.9;
const STRATA = 8;

/** A world in which the true drop is known. */
export interface World {
  /** True drop at every place, points. */
  readonly drop: number;
  /** Fewest and most shots at a place in each condition. */
  readonly shots: readonly [number, number];
  /** The pressured shots go to the easier places, as they do for a shooter who ends on free throws. */
  readonly easierPressured: boolean;
}

type Method = (strata: readonly Stratum[]) => DropEstimate | null;

export interface Covered {
  /** Share of intervals that hold the true drop. */
  readonly coverage: number;
  /** Mean width, points. */
  readonly width: number;
}

/** Plays `sets` records of 8 places in a world and asks a method for each. */
export function coverageOf(method: Method, world: World, sets: number, seed: number): Covered {
  const rng = rngFromSeed(seed);
  let held = 0;
  let width = 0;
  for (let set = 0; set < sets; set += 1) {
    const estimate = method(record(world, rng));
    if (!estimate) continue;
    if (estimate.low <= world.drop && world.drop <= estimate.high) held += 1;
    width += estimate.high - estimate.low;
  }
  return { coverage: held / sets, width: width / sets };
}

export const matched: Method = (strata) => matchedDrop(strata, LEVEL);

const together: Method = (strata) => {
  const sum = (condition: 'relaxed' | 'pressured') => ({
    makes: strata.reduce((total, stratum) => total + stratum[condition].makes, 0),
    attempts: strata.reduce((total, stratum) => total + stratum[condition].attempts, 0),
  });
  return simpleDrop(sum('relaxed'), sum('pressured'), LEVEL);
};

/** The weighted difference with ± z standard errors from the raw rates. */
const normal: Method = (strata) => {
  const total = strata.reduce((sum, stratum) => sum + mantelHaenszel(stratum), 0);
  let points = 0;
  let variance = 0;
  for (const stratum of strata) {
    const weight = mantelHaenszel(stratum) / total;
    for (const [condition, sign] of [
      ['relaxed', 1],
      ['pressured', -1],
    ] as const) {
      const { makes, attempts } = stratum[condition];
      const p = makes / attempts;
      points += 100 * sign * weight * p;
      variance += (100 * weight) ** 2 * ((p * (1 - p)) / attempts);
    }
  }
  const reach = zFor(LEVEL) * Math.sqrt(variance);
  return { points, low: points - reach, high: points + reach };
};

function mantelHaenszel({ relaxed, pressured }: Stratum): number {
  return (relaxed.attempts * pressured.attempts) / (relaxed.attempts + pressured.attempts);
}

function record({ drop, shots: [fewest, most], easierPressured }: World, rng: Rng): Stratum[] {
  return Array.from({ length: STRATA }, (_, place) => {
    const rate = easierPressured ? 0.3 + (0.55 * place) / (STRATA - 1) : 0.3 + 0.55 * rng.next();
    const shots = () => fewest + rng.below(most - fewest + 1);
    const few = easierPressured && place < STRATA / 2 ? () => fewest : shots;
    return { relaxed: shoot(shots(), rate, rng), pressured: shoot(few(), rate - drop / 100, rng) };
  });
}

function shoot(attempts: number, rate: number, rng: Rng): { makes: number; attempts: number } {
  let makes = 0;
  for (let shot = 0; shot < attempts; shot += 1) if (rng.chance(rate)) makes += 1;
  return { makes, attempts };
}

/** How far the coverage is from 90 %, where the pressured shots go to the easier places and the true drop is 5 points. */
export function coverageOutcomes(sets = 20_000): Outcome[] {
  printCoverage(sets / 5);
  const off = (method: Method, shots: World['shots']): number =>
    Math.abs(100 * (coverageOf(method, { drop: 5, shots, easierPressured: true }, sets, 7).coverage - LEVEL));
  const outcome = (shots: World['shots'], what: string, rival: Method): Outcome => ({
    what: `coverage off 90 %, ${shots.join(' to ')} shots a place`,
    unit: 'points',
    figure: off(matched, shots),
    rival: { what, figure: off(rival, shots) },
    n: String(sets),
    limit: { on: 'figure', most: 3, by: 'own' },
  });
  return [
    outcome([1, 5], 'the normal interval', normal),
    outcome([5, 25], 'all shots thrown together', together),
    outcome([25, 100], 'all shots thrown together', together),
  ];
}

/** Prints coverage in per cent and mean width in points for every world and method. */
export function printCoverage(sets = 20_000): void {
  console.log(`90 % interval of the drop, ${sets} records of ${STRATA} places: coverage % (width in points)`);
  console.log('shots/place  drop  mix      matched       normal        together');
  for (const shots of [
    [1, 5],
    [5, 25],
    [25, 100],
  ] as const) {
    for (const easierPressured of [false, true]) {
      for (const drop of [0, 5, 10]) {
        const figures = [matched, normal, together].map((method) => {
          const { coverage, width } = coverageOf(method, { drop, shots, easierPressured }, sets, 7);
          return `${(100 * coverage).toFixed(1)} (${width.toFixed(1)})`.padEnd(14);
        });
        const mix = easierPressured ? 'easier' : 'same';
        console.log(
          `${shots.join('-').padEnd(13)}${String(drop).padEnd(6)}${mix.padEnd(9)}${figures.join('')}`,
        );
      }
    }
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) printCoverage();
