import { rngFromSeed } from '../../../renderer/basics/chance.ts';
import { at, inverseOf } from '../../../renderer/stats/matrix.ts';
import {
  type Column,
  type Design,
  designOf,
  type WeeklyColumn,
} from '../../../renderer/stats/model/design.ts';
import { type ModelData, modelData } from '../../../renderer/stats/model/modelData.ts';
import { fitterOf } from '../../../renderer/stats/model/newton.ts';
import { ORDER_COLUMNS } from '../../../renderer/stats/model/orderCurve.ts';
import { PLAIN, play } from '../../bench/modelWorld.ts';

/*
 * The part of the model that lme4 and mgcv know as well: spot + warm + tired + pressured + a straight line over the weeks
 * + (1 | day), everything with flat priors. All other columns are held at 0.
 */

/** Twelve weeks of the same shooter on every machine: 9,600 shots, which compare.R was run on. */
export function twelveWeeks(): ModelData {
  const { rounds } = play({ ...PLAIN, weeks: 12, pressure: () => -0.2 }, rngFromSeed(2026));
  return modelData(rounds);
}

/** The cells as compare.R reads them. */
export function cellsCsv({ cells, sessions, places }: ModelData): string {
  const lines = ['day,week,spot,pressured,warm,tired,makes,attempts'];
  for (let session = 0; session < sessions.count; session += 1) {
    for (let cell = at(sessions.start, session); cell < at(sessions.start, session + 1); cell += 1) {
      const order = cell * ORDER_COLUMNS;
      lines.push(
        [
          session,
          at(sessions.week, session),
          places[at(cells.place, cell)]?.spot,
          at(cells.pressured, cell),
          at(cells.order, order),
          at(cells.order, order + 1),
          at(cells.makes, cell),
          at(cells.attempts, cell),
        ].join(','),
      );
    }
  }
  return `${lines.join('\n')}\n`;
}

/** Names and numbers as compare.R prints them. */
export interface Told {
  readonly estimate: Readonly<Record<string, number>>;
  readonly se: Readonly<Record<string, number>>;
}

const FLAT = { mean: 0, sd: 100 };
const HELD = { mean: 0, sd: 1e-4 };

/** The same model here, at a given spread of the days. */
export function fitStatic(data: ModelData, daySd: number): Told {
  const design = staticDesign(data);
  const mode = fitterOf(design).fit(
    { skill: HELD.sd, week: HELD.sd, dayPressure: HELD.sd, day: daySd },
    undefined,
    1e-9,
  );
  const covariance = inverseOf(mode.factors.shared);
  const index = (wanted: Partial<Record<string, unknown>>): number =>
    design.columns.findIndex(({ term }) =>
      Object.entries(wanted).every(
        ([key, value]) => (term as Partial<Record<string, unknown>>)[key] === value,
      ),
    );
  const freeThrow = index({ term: 'spot', spot: 'free-throw' });
  const estimate: Record<string, number> = {};
  const se: Record<string, number> = {};
  const of = (i: number, j: number): number => at(covariance.values, i * covariance.size + j);
  const tell = (name: string, i: number, against: number | null): void => {
    estimate[name] = at(mode.state.shared, i) - (against === null ? 0 : at(mode.state.shared, against));
    const variance = against === null ? of(i, i) : of(i, i) + of(against, against) - 2 * of(i, against);
    se[name] = Math.sqrt(variance);
  };
  tell('pressured', index({ term: 'pressure' }), null);
  tell('warm', index({ term: 'order', column: 0 }), null);
  tell('tired', index({ term: 'order', column: 1 }), null);
  tell('week', index({ term: 'trend' }), null);
  for (const { spot } of data.places) {
    if (spot !== 'free-throw') tell(`spot${spot}`, index({ term: 'spot', spot }), freeThrow);
  }
  return { estimate, se };
}

function staticDesign(data: ModelData): Design {
  const design = designOf(data, { knots: false, trendWeeks: null });
  const free = new Set(['spot', 'order', 'pressure']);
  const loosened = <T extends Column>(column: T): T => ({
    ...column,
    prior: free.has(column.term.term) ? FLAT : HELD,
  });
  const line: WeeklyColumn = {
    term: { term: 'trend', slope: 0 },
    prior: FLAT,
    side: 'all',
    values: Float64Array.from({ length: data.weeks.count }, (_, week) => week),
  };
  const weekly = [...design.weekly.map(loosened), line];
  return { ...design, columns: [...design.columns.slice(0, design.base).map(loosened), ...weekly], weekly };
}
