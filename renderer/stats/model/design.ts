import type { Ingredient, UsualPressure } from '../../pressure/ingredients.ts';
import type { ShotKind, SpotName } from '../../court/spots.ts';
import { at } from '../matrix.ts';
import { type ModelData, UNKNOWN_INGREDIENTS } from './modelData.ts';
import { KNOTS, ORDER_COLUMNS, WARM_TIRED } from './orderCurve.ts';
import * as prior from './priors.ts';
import type { Normal } from './priors.ts';
import { RowBuilder, type SparseRows } from './sparseRows.ts';
import { type TrendColumn, trendColumns } from './trend.ts';
import { usualPressure } from './usualPressure.ts';

/*
 * The model. In a cell of session d, week w, place k = (spot, kind) and condition x (1 pressured, 0 relaxed):
 *
 *     makes ~ Binomial(attempts, p)
 *     logit p = a + spot_k + kind_k + order(i) + s_w + b_d
 *               + x ( μ + κ (dose − ½) + v_spot + Σ ingredient + Σ_j γ_j h_j(w) + u_w + c_d )
 *
 * a, spot, kind, order, μ, κ, v, ingredients and γ are the shared unknowns, normal with the priors of priors.ts.
 * s is a random walk over the weeks, u follows the week before with correlation 0.9, b and c are the day's own.
 *
 * The level a, μ and the trend γ touch a cell only through its week and condition. They are kept apart as "weekly"
 * columns, which cost nothing for each cell.
 */

/** What may be switched off or changed, for comparisons with other models. */
export interface DesignOptions {
  /** warm and tired; on by default. */
  readonly warmTired: boolean;
  /** The free order curve; on by default. */
  readonly knots: boolean;
  /** Weeks for each slope of the pressure trend, 26 by default; null for none. */
  readonly trendWeeks: number | null;
  /** Standard deviation of the prior of a slope, for 10 weeks. */
  readonly trendSd: number;
  /** Ingredients one by one; on by default. */
  readonly ingredients: boolean;
  /** Standard deviation of the prior of μ; 0.35 by default. */
  readonly pressureSd: number;
}

export const FULL_DESIGN: DesignOptions = {
  warmTired: true,
  knots: true,
  trendWeeks: 26,
  trendSd: prior.TREND.sd,
  ingredients: true,
  pressureSd: prior.PRESSURE.sd,
};

/** What a column of the model is about. */
export type Term =
  | { readonly term: 'spot' | 'spot-pressure'; readonly spot: SpotName }
  | { readonly term: 'kind'; readonly shot: ShotKind }
  | { readonly term: 'order'; readonly column: number }
  | { readonly term: 'ingredient'; readonly ingredient: Ingredient }
  | { readonly term: 'trend'; readonly slope: number }
  | { readonly term: 'dose' | 'level' | 'pressure' };

export interface Column {
  readonly term: Term;
  readonly prior: Normal;
}

/** Columns that touch cells through their week and condition alone. */
export interface WeeklyColumn extends Column {
  /** In all shots, or in pressured ones. */
  readonly side: 'all' | 'pressured';
  /** Its value in each week. */
  readonly values: Float64Array;
}

/** The data in the shape that Newton's method reads. */
export interface Design {
  /** One for each base column, then one for each weekly column. */
  readonly columns: readonly Column[];
  /** How many base columns there are. */
  readonly base: number;
  readonly weekly: readonly WeeklyColumn[];
  /** The base columns, cell by cell. */
  readonly rows: SparseRows;
  readonly pressured: Uint8Array;
  readonly makes: Float64Array;
  readonly attempts: Float64Array;
  readonly sessions: ModelData['sessions'];
  readonly weeks: number;
  readonly plan: ColumnPlan;
}

/** Where the base columns are. */
export interface ColumnPlan {
  /** Of each place. */
  readonly spot: readonly number[];
  /** Of each place; undefined for a free throw. */
  readonly kind: readonly (number | undefined)[];
  /** Of each place. */
  readonly spotPressure: readonly number[];
  /** Index of an order column in the data, and here. */
  readonly order: readonly { readonly at: number; readonly column: number }[];
  readonly dose: number;
  /** Of each ingredient. */
  readonly ingredients: readonly number[];
}

/**
 * @param usual ingredients are counted from their shares in it, so that μ is pressure as this shooter usually meets it
 */
export function designOf(
  data: ModelData,
  options: Partial<DesignOptions> = {},
  usual: UsualPressure = usualPressure(data),
): Design {
  const chosen = { ...FULL_DESIGN, ...options };
  const plan = baseColumns(data, chosen);
  const weekly = weeklyColumns(data.weeks.count, chosen);
  const { cells } = data;
  const rows = new RowBuilder(cells.count);
  const centre = data.ingredients.map((one) => usual.ingredients[one] ?? 0);
  for (let cell = 0; cell < cells.count; cell += 1) {
    const place = at(cells.place, cell);
    rows.add(plan.spot[place] ?? NaN, 1);
    const kind = plan.kind[place];
    if (kind !== undefined) rows.add(kind, 1);
    for (const { at: index, column } of plan.order) {
      rows.add(column, at(cells.order, cell * ORDER_COLUMNS + index));
    }
    if (cells.pressured[cell] === 1) {
      rows.add(plan.dose, at(cells.dose, cell) - prior.UNKNOWN_DOSE);
      rows.add(plan.spotPressure[place] ?? NaN, 1);
      const mask = at(cells.mask, cell);
      if (mask !== UNKNOWN_INGREDIENTS) {
        for (const [bit, column] of plan.ingredients.entries()) {
          rows.add(column, ((mask >> bit) & 1) - at(centre, bit));
        }
      }
    }
    rows.close();
  }
  return {
    columns: [...plan.columns, ...weekly],
    base: plan.columns.length,
    weekly,
    rows: rows.rows(),
    pressured: cells.pressured,
    makes: Float64Array.from(cells.makes),
    attempts: Float64Array.from(cells.attempts),
    sessions: data.sessions,
    weeks: data.weeks.count,
    plan,
  };
}

interface BasePlan extends ColumnPlan {
  readonly columns: readonly Column[];
}

function baseColumns({ places, ingredients }: ModelData, options: DesignOptions): BasePlan {
  const columns: Column[] = [];
  const known = new Map<string, number>();
  const column = (term: Term, normal: Normal): number => {
    const key = JSON.stringify(term);
    const index = known.get(key) ?? columns.push({ term, prior: normal }) - 1;
    known.set(key, index);
    return index;
  };
  const spot = places.map((place) => column({ term: 'spot', spot: place.spot }, prior.SPOT));
  const kind = places.map(({ shot }) =>
    shot === 'free-throw'
      ? undefined
      : column({ term: 'kind', shot }, shot === 'form' ? prior.FORM : prior.KIND),
  );
  const order: { at: number; column: number }[] = [];
  const bends = KNOTS.map((_, knot) => (knot === 0 ? prior.ORDER_SLOPE : prior.ORDER_BEND));
  const orderPriors = [prior.WARM, prior.TIRED, prior.SPENT, ...bends];
  for (const [index, normal] of orderPriors.entries()) {
    if (index < WARM_TIRED ? options.warmTired : options.knots) {
      order.push({ at: index, column: column({ term: 'order', column: index }, normal) });
    }
  }
  const dose = column({ term: 'dose' }, prior.DOSE);
  const spotPressure = places.map((place) =>
    column({ term: 'spot-pressure', spot: place.spot }, prior.SPOT_PRESSURE),
  );
  const own = options.ingredients ? ingredients : [];
  const ingredient = own.map((one) => column({ term: 'ingredient', ingredient: one }, prior.INGREDIENT));
  return { columns, spot, kind, spotPressure, order, dose, ingredients: ingredient };
}

function weeklyColumns(weeks: number, { trendWeeks, trendSd, pressureSd }: DesignOptions): WeeklyColumn[] {
  const ones = new Float64Array(weeks).fill(1);
  const slopes = trendWeeks === null ? [] : trendColumns(weeks, trendWeeks);
  return [
    { term: { term: 'level' }, prior: prior.LEVEL, side: 'all', values: ones },
    {
      term: { term: 'pressure' },
      prior: { mean: prior.PRESSURE.mean, sd: pressureSd },
      side: 'pressured',
      values: ones,
    },
    ...slopes.map((values: TrendColumn, slope): WeeklyColumn => ({
      term: { term: 'trend', slope },
      prior: { mean: prior.TREND.mean, sd: trendSd },
      side: 'pressured',
      values,
    })),
  ];
}
