import { readFileSync } from 'node:fs';

import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../../renderer/basics/chance.ts';
import { at, cholesky, inverseOf, zeros } from '../../../renderer/stats/matrix.ts';
import type { Column, Design } from '../../../renderer/stats/model/design.ts';
import { drawStates } from '../../../renderer/stats/model/draws.ts';
import { fitterOf, type Mode } from '../../../renderer/stats/model/newton.ts';
import { RowBuilder } from '../../../renderer/stats/model/sparseRows.ts';
import { expit, logChoose } from '../../../renderer/stats/special.ts';

/*
 * Data sets with known fits of binomial models with one random intercept: herds, children or batters stand for sessions.
 * Estimates by R 4.2.2; where the data come from stands in tests/fixtures/model/SOURCES.md.
 */

/** Makes of attempts in a group, with the values of the fixed effects. */
interface Row {
  readonly group: string;
  readonly makes: number;
  readonly attempts: number;
  readonly x: readonly number[];
}

function table(name: string): Record<string, string>[] {
  const text = readFileSync(new URL(`../../fixtures/model/${name}.csv`, import.meta.url), 'utf8');
  const [head = '', ...lines] = text.trim().replaceAll('"', '').split('\n');
  const names = head.split(',');
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, i) => [names[i] ?? '', cell])));
}

const HELD = 1e-5;

/** makes ~ fixed effects + (1 | group); a fixed effect is free, or held at a value. */
function designOf(rows: readonly Row[], effects: readonly { mean: number; sd: number }[]): Design {
  const groups = [...new Set(rows.map(({ group }) => group))];
  const sorted = groups.flatMap((group) => rows.filter((row) => row.group === group));
  const builder = new RowBuilder(sorted.length);
  for (const { x } of sorted) {
    for (const [column, value] of x.entries()) builder.add(column, value);
    builder.close();
  }
  const start = Uint32Array.from([
    0,
    ...groups.map((group) => sorted.findLastIndex((row) => row.group === group) + 1),
  ]);
  return {
    columns: effects.map((prior): Column => ({ term: { term: 'level' }, prior })),
    base: effects.length,
    weekly: [],
    rows: builder.rows(),
    pressured: new Uint8Array(sorted.length),
    makes: Float64Array.from(sorted, ({ makes }) => makes),
    attempts: Float64Array.from(sorted, ({ attempts }) => attempts),
    sessions: { count: groups.length, dates: groups, week: new Uint16Array(groups.length), start },
    weeks: 1,
    plan: { spot: [], kind: [], spotPressure: [], order: [], dose: 0, ingredients: [] },
  };
}

function fitted(design: Design, sd: number): Mode {
  return fitterOf(design).fit({ skill: HELD, week: HELD, dayPressure: HELD, day: sd }, undefined, 1e-10);
}

/** ln of the number of ways to come to the data, which the model leaves out. */
function ways(rows: readonly Row[]): number {
  return rows.reduce((sum, { makes, attempts }) => sum + logChoose(attempts, makes), 0);
}

const cbpp: Row[] = table('cbpp').map(({ herd, incidence, size, period }) => ({
  group: herd ?? '',
  makes: Number(incidence),
  attempts: Number(size),
  x: [1, ...['2', '3', '4'].map((later) => (period === later ? 1 : 0))],
}));

describe('cattle in 15 herds, lme4 1.1-31 glmer(incidence ~ period + (1 | herd))', () => {
  // nAGQ = 1.
  const effects = [-1.39834286447115, -0.991924974975739, -1.12821621594334, -1.57974541364919];
  const sd = 0.642069927729179;
  const logLik = -92.0265663895303;
  const laplaceAt = (moved: readonly number[], spread: number): Mode =>
    fitted(
      designOf(
        cbpp,
        moved.map((mean) => ({ mean, sd: HELD })),
      ),
      spread,
    );

  it('has Laplace’s log-likelihood, herd by herd, and lme4’s to its own tolerance', () => {
    const ours = laplaceAt(effects, sd).logEvidence;
    expect(ours).toBeCloseTo(laplaceByHerd(cbpp, effects, sd), 6);
    // lme4 stops its inner iteration a little early: worked herd by herd in R the value is -92.0262862, as here.
    expect(Math.abs(ours + ways(cbpp) - logLik)).toBeLessThan(5e-4);
  });

  it('has its maximum there', () => {
    const top = laplaceAt(effects, sd).logEvidence;
    for (const [i] of effects.entries()) {
      for (const by of [-0.05, 0.05]) {
        const moved = effects.map((effect, j) => (j === i ? effect + by : effect));
        expect(laplaceAt(moved, sd).logEvidence).toBeLessThan(top);
      }
    }
    expect(laplaceAt(effects, sd * 1.05).logEvidence).toBeLessThan(top);
    expect(laplaceAt(effects, sd / 1.05).logEvidence).toBeLessThan(top);
  });

  it('has lme4’s log-likelihood and standard errors where lme4 runs its inner iteration to the end', () => {
    // The same call with glmerControl(tolPwrss = 1e-13). With the default, 1e-7, its errors come out up to 1.3 % smaller.
    const exact = [-1.39853204, -0.99231588, -1.12866415, -1.5803156, 0.6422698886];
    const errors = [0.232473282, 0.306641429, 0.326637339, 0.427437231];
    const logLikAt = (moved: readonly number[]): number =>
      laplaceAt(moved.slice(0, 4), moved[4] ?? NaN).logEvidence;
    expect(logLikAt(exact) + ways(cbpp)).toBeCloseTo(-92.0262818745, 6);
    const bent = errorsByBend(logLikAt, exact);
    for (const [i, error] of errors.entries())
      expect(Math.abs((bent[i] ?? NaN) / error - 1)).toBeLessThan(0.001);
  });

  it('mends Laplace to the 25-point quadrature by weighing its draws', () => {
    // At lme4's estimates with nAGQ = 25.
    const aghq = [-1.3992237278292, -0.991408883812732, -1.12780959415794, -1.57948095070482];
    const spread = 0.647519914522493;
    const design = designOf(
      cbpp,
      aghq.map((mean) => ({ mean, sd: HELD })),
    );
    const mode = fitted(design, spread);
    const { missed, effective } = drawStates(design, [{ mode, weight: 1 }], 20_000, rngFromSeed(5));
    expect(effective).toBeGreaterThan(0.7);
    const exact = mode.logEvidence + (missed ?? NaN);
    expect(exact).toBeCloseTo(byQuadrature(cbpp, aghq, spread), 2);
  });
});

/** Standard errors at a maximum: inverse of the matrix of second differences. */
function errorsByBend(logLik: (at: readonly number[]) => number, top: readonly number[]): number[] {
  const step = 0.02;
  const size = top.length;
  const moved = (...by: readonly (readonly [index: number, steps: number])[]): number => {
    const place = [...top];
    for (const [index, steps] of by) place[index] = (place[index] ?? NaN) + steps * step;
    return logLik(place);
  };
  const bend = zeros(size);
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < size; j += 1) {
      const mixed =
        moved([i, 1], [j, 1]) - moved([i, 1], [j, -1]) - moved([i, -1], [j, 1]) + moved([i, -1], [j, -1]);
      bend.values[i * size + j] = -mixed / (4 * step * step);
    }
  }
  const { values } = inverseOf(cholesky(bend));
  return top.map((_, i) => Math.sqrt(at(values, i * size + i)));
}

/** Each group's rows as a function of its own intercept: ln p(makes | b) + ln p(b), with slope and bend. */
function byGroup(rows: readonly Row[], effects: readonly number[], sd: number) {
  const groups = new Set(rows.map(({ group }) => group));
  return [...groups].map((group) => (b: number) => {
    let log = -(b * b) / (2 * sd * sd) - Math.log(sd * Math.sqrt(2 * Math.PI));
    let slope = -b / (sd * sd);
    let bend = 1 / (sd * sd);
    for (const { x, makes, attempts } of rows.filter((row) => row.group === group)) {
      const eta = b + x.reduce((total, value, i) => total + value * (effects[i] ?? NaN), 0);
      const p = expit(eta);
      log += makes * eta - attempts * Math.log1p(Math.exp(eta));
      slope += makes - attempts * p;
      bend += attempts * p * (1 - p);
    }
    return { log, slope, bend };
  });
}

/** Laplace's log-likelihood, one intercept after the other. */
function laplaceByHerd(rows: readonly Row[], effects: readonly number[], sd: number): number {
  return byGroup(rows, effects, sd).reduce((sum, of) => {
    let b = 0;
    for (let step = 0; step < 50; step += 1) b += of(b).slope / of(b).bend;
    return sum + of(b).log + Math.log((2 * Math.PI) / of(b).bend) / 2;
  }, 0);
}

/** The log-likelihood with each intercept integrated out by the midpoint rule. */
function byQuadrature(rows: readonly Row[], effects: readonly number[], sd: number): number {
  const steps = 2000;
  const width = (16 * sd) / steps;
  return byGroup(rows, effects, sd).reduce((sum, of) => {
    let integral = 0;
    for (let k = 0; k < steps; k += 1) integral += Math.exp(of(-8 * sd + (k + 0.5) * width).log) * width;
    return sum + Math.log(integral);
  }, 0);
}

const bacteria: Row[] = table('bacteria').map(({ id, trt, late, made }) => ({
  group: id ?? '',
  makes: Number(made),
  attempts: 1,
  x: [1, trt === 'drug' ? 1 : 0, trt === 'drug+' ? 1 : 0, Number(late)],
}));

describe('single tests of 50 children, lme4 1.1-31 glmer(made ~ trt + late + (1 | id), nAGQ = 25)', () => {
  const effects = [3.57904279469683, -1.36894703321945, -0.789116172789445, -1.62685659721354];
  const sd = 1.3043127154243;

  it('is where the quadrature has lme4’s log-likelihood, and Laplace lies as far off as Laplace must', () => {
    expect(byQuadrature(bacteria, effects, sd)).toBeCloseTo(-95.8970569367557, 4);
    const design = designOf(
      bacteria,
      effects.map((mean) => ({ mean, sd: HELD })),
    );
    expect(fitted(design, sd).logEvidence).toBeCloseTo(laplaceByHerd(bacteria, effects, sd), 6);
  });
});

describe('shrinkage of 18 batters after 45 turns, Efron & Morris 1975', () => {
  const batters = table('efron_morris').map((line) => ({
    row: {
      group: line['player_id'] ?? '',
      makes: Number(line['hits']),
      attempts: Number(line['at_bats']),
      x: [1],
    },
    season: Number(line['rest_avg']),
  }));
  const design = designOf(
    batters.map(({ row }) => row),
    [{ mean: 0, sd: 100 }],
  );
  it('is James-Stein’s where the normal approximation holds: factor 0.212, error 0.021 instead of 0.075', () => {
    // James-Stein's factor c belongs to a variance between batters of s² c / (1 − c), s² = ȳ(1 − ȳ) / 45; in log-odds
    // divided by (ȳ(1 − ȳ))².
    const mean = 0.265432;
    const spread = mean * (1 - mean);
    const factor = 0.2116534;
    const sd = Math.sqrt(((spread / 45) * factor) / (1 - factor)) / spread;
    const { state } = fitted(design, sd);
    const shrunk = batters.map((_, i) => expit(at(state.shared, 0) + at(state.days, 2 * i)));
    const error = (estimates: readonly number[]): number =>
      estimates.reduce((sum, estimate, i) => sum + (estimate - (batters[i]?.season ?? NaN)) ** 2, 0);
    const raw = batters.map(({ row }) => row.makes / row.attempts);
    expect(error(raw)).toBeCloseTo(0.0753, 4);
    expect(Math.abs(error(shrunk) - 0.0213)).toBeLessThan(0.001);
    const slope = ((shrunk[0] ?? NaN) - (shrunk[17] ?? NaN)) / ((raw[0] ?? NaN) - (raw[17] ?? NaN));
    expect(Math.abs(slope - factor)).toBeLessThan(0.02);
  });
});
