import type { Rng } from '../../renderer/basics/chance.ts';
import { present } from '../../renderer/basics/invariant.ts';
import { at } from '../../renderer/stats/matrix.ts';
import { type Design, designOf } from '../../renderer/stats/model/design.ts';
import { type ModelData, modelData } from '../../renderer/stats/model/modelData.ts';
import { SPREAD_SCALES, type Spreads, WEEK_CORRELATION } from '../../renderer/stats/model/priors.ts';
import { referenceOf } from '../../renderer/stats/model/reference.ts';
import { standardise } from '../../renderer/stats/model/standardise.ts';
import { type State, weekShifts } from '../../renderer/stats/model/state.ts';
import { expit } from '../../renderer/stats/special.ts';
import { PLAIN, play } from './modelWorld.ts';

/** A record of which the truth is known. */
export interface Known {
  readonly data: ModelData;
  /** True standardised drop of each week, points. */
  readonly drops: readonly number[];
}

/**
 * A record whose truth is itself drawn from the priors: every unknown, the spreads included. Four weeks of three
 * sessions; 30 pressured shots a week.
 */
export function priorRecord(rng: Rng): Known {
  // Two sessions of three have one pressured round of 15.
  const plan = (_: Rng, session: number) =>
    session === 2
      ? (['relaxed', 'relaxed', 'relaxed'] as const)
      : session === 1
        ? (['relaxed', 'relaxed', 'pressured', 'relaxed'] as const)
        : (['relaxed', 'relaxed', 'relaxed', 'pressured'] as const);
  const template = modelData(
    play({ ...PLAIN, weeks: 4, sessions: 3, plan, pressuredMix: [2, 2, 2, 2, 2, 1, 1, 3] }, rng).rounds,
  );
  const design = designOf(template);
  const spreads = drawSpreads(rng);
  const truth = drawState(design, spreads, rng);
  const data = { ...template, cells: { ...template.cells, makes: shoot(design, truth, rng) } };
  const reference = present(referenceOf(data, 'relaxed'), 'a mix');
  const exact = standardise(
    data,
    design,
    { draws: [truth], counts: Uint32Array.of(1), effective: null, missed: null },
    reference,
  );
  return { data, drops: Array.from(exact.relaxed, (rate, week) => 100 * (rate - at(exact.pressured, week))) };
}

function drawSpreads(rng: Rng): Spreads {
  const halfNormal = (scale: number): number => Math.abs(scale * rng.normal());
  return {
    skill: halfNormal(SPREAD_SCALES.skill),
    day: halfNormal(SPREAD_SCALES.day),
    week: halfNormal(SPREAD_SCALES.week),
    dayPressure: halfNormal(SPREAD_SCALES.dayPressure),
  };
}

function drawState(design: Design, spreads: Spreads, rng: Rng): State {
  const weeks = new Float64Array(2 * design.weeks);
  let [s, u] = [0, spreads.week * rng.normal()];
  for (let week = 0; week < design.weeks; week += 1) {
    s += spreads.skill * rng.normal();
    if (week > 0) {
      u = WEEK_CORRELATION * u + spreads.week * Math.sqrt(1 - WEEK_CORRELATION ** 2) * rng.normal();
    }
    weeks.set([s, u], 2 * week);
  }
  return {
    shared: Float64Array.from(design.columns, ({ prior }) => prior.mean + prior.sd * rng.normal()),
    weeks,
    days: Float64Array.from(
      { length: 2 * design.sessions.count },
      (_, i) => (i % 2 === 0 ? spreads.day : spreads.dayPressure) * rng.normal(),
    ),
  };
}

/** Makes of every cell. */
function shoot(design: Design, { shared, weeks, days }: State, rng: Rng): Uint32Array {
  const { rows, sessions, pressured, attempts } = design;
  const shifts = weekShifts(design, shared, weeks);
  const makes = new Uint32Array(attempts.length);
  for (let session = 0; session < sessions.count; session += 1) {
    const week = at(sessions.week, session);
    const level = at(shifts, 2 * week) + at(days, 2 * session);
    const press = at(shifts, 2 * week + 1) + at(days, 2 * session + 1);
    for (let cell = at(sessions.start, session); cell < at(sessions.start, session + 1); cell += 1) {
      let eta = level + at(pressured, cell) * press;
      for (let k = at(rows.start, cell); k < at(rows.start, cell + 1); k += 1) {
        eta += at(rows.value, k) * at(shared, at(rows.column, k));
      }
      for (let shot = 0; shot < at(attempts, cell); shot += 1) {
        if (rng.chance(expit(eta))) makes[cell] = at(makes, cell) + 1;
      }
    }
  }
  return makes;
}
