import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { type Rng, rngFromSeed } from '../../renderer/basics/chance.ts';
import { chanceOfAtLeast, middleOf, poissonBinomial } from '../../renderer/stats/ability.ts';
import {
  againstRival,
  type CalibrationReading,
  calibrationOf,
  type Outcome,
  placeIn,
  rankedProbabilityScore,
} from '../../renderer/stats/outcomes.ts';
import { gaussHermite } from '../../renderer/stats/quadrature.ts';
import { expit } from '../../renderer/stats/special.ts';

const SHOTS = 25;

/** A forecast over 0 .. n makes, from any weights. */
const chances = fc
  .array(fc.double({ min: 0.001, max: 1, noNaN: true }), { minLength: 2, maxLength: 30 })
  .map(normalised);

function normalised(weights: readonly number[]): number[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

/** Makes of 25 at a middle log-odds; days differ by a standard deviation. */
function forecastAt(middle: number, daySd: number): number[] {
  const { nodes, weights } = gaussHermite(15);
  const mixed = Array.from({ length: SHOTS + 1 }, () => 0);
  for (const [node, z] of nodes.entries()) {
    const rates = Array.from({ length: SHOTS }, () => expit(middle + daySd * z));
    for (const [makes, chance] of poissonBinomial(rates).entries()) {
      mixed[makes] = (mixed[makes] ?? NaN) + (weights[node] ?? NaN) * chance;
    }
  }
  return mixed;
}

function outcome(date: string, said: readonly number[], makes: number): Outcome {
  return { date, chances: said, ...middleOf(said), makes };
}

/** The true shooter of the simulations: 45 % on a typical day, days differ by 0.25. */
const MIDDLE = -0.2;
const DAY_SD = 0.25;

function results(days: number, perDay: number, rng: Rng): { date: string; makes: number }[] {
  return Array.from({ length: days }, (_, day) => {
    const p = expit(MIDDLE + DAY_SD * rng.normal());
    return Array.from({ length: perDay }, () => ({
      date: `day ${day}`,
      makes: Array.from({ length: SHOTS }, () => rng.chance(p)).filter(Boolean).length,
    }));
  }).flat();
}

/** In how many of 100 seasons a forecaster is read as what. */
function readings(
  said: readonly number[],
  days: number,
  perDay: number,
): Partial<Record<CalibrationReading, number>> {
  const rng = rngFromSeed(41);
  const counted: Partial<Record<CalibrationReading, number>> = {};
  const SEASONS = 400;
  for (let season = 0; season < SEASONS; season += 1) {
    const outcomes = results(days, perDay, rng).map(({ date, makes }) => outcome(date, said, makes));
    const { reading } = calibrationOf(outcomes);
    counted[reading] = (counted[reading] ?? 0) + 100 / SEASONS;
  }
  return counted;
}

describe('the place of a result in its forecast', () => {
  it('is ½ on average where the forecast is right, whatever it is', () => {
    fc.assert(
      fc.property(chances, (said) => {
        const mean = said.reduce((sum, chance, makes) => sum + chance * placeIn(said, makes), 0);
        expect(mean).toBeCloseTo(0.5, 12);
      }),
    );
  });
  it('lies between 0 and 1 and rises with the makes', () => {
    fc.assert(
      fc.property(chances, (said) => {
        const places = said.map((_, makes) => placeIn(said, makes));
        expect(places).toEqual(places.toSorted((a, b) => a - b));
        for (const place of places) expect(place > 0 && place < 1).toBe(true);
      }),
    );
  });
});

describe('the ranked probability score', () => {
  it('worked by hand: 0.1, 0.2, 0.3, 0.4 and 2 made is 0.01 + 0.09 + 0.16', () => {
    expect(rankedProbabilityScore([0.1, 0.2, 0.3, 0.4], 2)).toBeCloseTo(0.26, 12);
  });
  it('of one single number is how far it was off', () => {
    const sure = [0, 0, 0, 1, 0, 0];
    for (const makes of [0, 1, 3, 5]) expect(rankedProbabilityScore(sure, makes)).toBe(Math.abs(makes - 3));
  });
  it('is Brier’s score summed over every mark that could have been set', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.01, max: 0.99, noNaN: true }), { minLength: 1, maxLength: 12 }),
        fc.nat(),
        (rates, any) => {
          const makes = any % (rates.length + 1);
          const ability = { weights: [1], rates: [rates] };
          let brier = 0;
          for (let mark = 1; mark <= rates.length; mark += 1) {
            brier += (chanceOfAtLeast(ability, mark) - (makes >= mark ? 1 : 0)) ** 2;
          }
          expect(rankedProbabilityScore([...poissonBinomial(rates)], makes)).toBeCloseTo(brier, 10);
        },
      ),
    );
  });
  it('is proper: whoever says what they believe expects the best score', () => {
    const pair = fc
      .integer({ min: 2, max: 12 })
      .chain((length) =>
        fc.tuple(
          ...[0, 1].map(() =>
            fc
              .array(fc.double({ min: 0.001, max: 1, noNaN: true }), { minLength: length, maxLength: length })
              .map(normalised),
          ),
        ),
      );
    fc.assert(
      fc.property(pair, ([believed = [], said = []]) => {
        const expected = (forecast: readonly number[]) =>
          believed.reduce((sum, chance, makes) => sum + chance * rankedProbabilityScore(forecast, makes), 0);
        expect(expected(believed)).toBeLessThanOrEqual(expected(said) + 1e-12);
      }),
    );
  });
});

describe('forecasts and what came of them', () => {
  const said = forecastAt(MIDDLE, DAY_SD);
  const { low, high } = middleOf(said);

  it('counts the rounds within, below and above, and how many were to be expected within', () => {
    const makes = [low - 1, low, Math.round((low + high) / 2), high, high + 1, high + 2];
    const counted = calibrationOf(makes.map((made, at) => outcome(`day ${at}`, said, made)));
    expect(counted).toMatchObject({ inside: 3, below: 1, above: 2, reading: 'too few' });
    const within = said.slice(low, high + 1).reduce((sum, chance) => sum + chance, 0);
    expect(within).toBeGreaterThan(0.8);
    expect(counted.expectedInside).toBeCloseTo(6 * within, 12);
  });
  it('says nothing before 20 rounds on 8 days', () => {
    const season = (days: number, perDay: number) =>
      calibrationOf(results(days, perDay, rngFromSeed(4)).map((one) => outcome(one.date, said, one.makes)));
    expect(calibrationOf([])).toMatchObject({ needs: { rounds: 20, days: 8 }, reading: 'too few' });
    expect(season(19, 1)).toMatchObject({ needs: { rounds: 1, days: 0 }, reading: 'too few' });
    expect(season(7, 5)).toMatchObject({ needs: { rounds: 0, days: 1 }, reading: 'too few' });
    expect(season(8, 3)).toMatchObject({ needs: { rounds: 0, days: 0 }, reading: 'fits' });
  });
  it('seen from the side of the misses, hopeful is gloomy and below is above', () => {
    const MIRRORED: Partial<Record<CalibrationReading, CalibrationReading>> = {
      'too hopeful': 'too gloomy',
      'too gloomy': 'too hopeful',
    };
    fc.assert(
      fc.property(fc.integer(), fc.double({ min: -0.6, max: 0.6, noNaN: true }), (seed, off) => {
        const off25 = forecastAt(MIDDLE + off, DAY_SD);
        const outcomes = results(10, 3, rngFromSeed(seed)).map((one) => outcome(one.date, off25, one.makes));
        const misses = outcomes.map((one): Outcome => ({
          date: one.date,
          chances: one.chances.toReversed(),
          low: SHOTS - one.high,
          high: SHOTS - one.low,
          makes: SHOTS - one.makes,
        }));
        const seen = calibrationOf(outcomes);
        const mirrored = calibrationOf(misses);
        expect([mirrored.below, mirrored.above]).toEqual([seen.above, seen.below]);
        expect(mirrored.reading).toBe(MIRRORED[seen.reading] ?? seen.reading);
      }),
    );
  });
});

/*
 * How often forecasters of a known fault are found out, in 400 seasons each; the error of a share is below 2.5 points
 * (one standard error). The shooter's days differ, so a day's rounds go together.
 */
describe.each([
  [20, 3],
  [10, 6],
  [60, 1],
])('%d days of %d rounds', (days, perDay) => {
  it('true forecasts are called wrong in at most 5 of 100 seasons', () => {
    const { fits = 0 } = readings(forecastAt(MIDDLE, DAY_SD), days, perDay);
    expect(fits).toBeGreaterThanOrEqual(95 - 1.1);
  });
  it('spans of half the width are too sure, and twice the width too careful', () => {
    const chanceAlone = forecastAt(MIDDLE, 0);
    // The fourth power of a bell is a bell of half the width.
    const sure = readings(normalised(chanceAlone.map((chance) => chance ** 4)), days, perDay);
    expect(sure['too sure']).toBeGreaterThan(90);
    expect(readings(forecastAt(MIDDLE, 0.9), days, perDay)['too careful']).toBeGreaterThan(90);
  });
  it('whoever forgets that days differ is found too sure more often than not by luck', () => {
    expect(readings(forecastAt(MIDDLE, 0), days, perDay)['too sure']).toBeGreaterThan(15);
  });
  it('ten points too many are too hopeful, ten too few too gloomy', () => {
    expect(readings(forecastAt(MIDDLE + 0.4, DAY_SD), days, perDay)['too hopeful']).toBeGreaterThan(80);
    expect(readings(forecastAt(MIDDLE - 0.4, DAY_SD), days, perDay)['too gloomy']).toBeGreaterThan(80);
  });
});

describe('beside a rival', () => {
  const right = forecastAt(MIDDLE, DAY_SD);
  const off = forecastAt(MIDDLE + 0.6, DAY_SD);
  const season = (said: readonly number[]) =>
    results(20, 3, rngFromSeed(12)).map(({ date, makes }) => outcome(date, said, makes));

  it('is better, worse, or no different from itself', () => {
    expect(againstRival(season(right), season(off))?.reading).toBe('better');
    expect(againstRival(season(off), season(right))?.reading).toBe('worse');
    const same = againstRival(season(right), season(right));
    expect(same?.reading).toBe('alike');
    expect(same?.ours).toBe(same?.rival);
  });
  it('is nothing without a round', () => {
    expect(againstRival([], [])).toBeNull();
  });
});
