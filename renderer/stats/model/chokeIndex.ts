import type { IsoDate, Probability } from '../../basics/units.ts';
import type { Place } from '../dayTallies.ts';
import type { ByCondition } from '../drop.ts';
import type { ShotGroup } from '../shotGroups.ts';
import type { Ingredient, UsualPressure } from '../../pressure/ingredients.ts';
import type { Tally } from '../../log/roundCells.ts';
import type { Estimate, PointsEstimate } from './estimate.ts';
import type { Spreads } from './priors.ts';
import type { PlaceWeight } from './reference.ts';

/* The choke index and all that is told with it. Plain values only, so that a worker can hand it over. */

/** Why there is no index. */
export type NoIndexReason =
  'no relaxed shot' | 'no pressured shot' | 'nothing of the mix' | 'too little of the mix under pressure';

export interface NoIndex {
  readonly kind: 'none';
  readonly reason: NoIndexReason;
  /** Share of the mix that was ever shot under pressure. */
  readonly seen: Probability;
}

/** The drop with what a verdict needs to know. */
export interface Overall extends PointsEstimate {
  /** Chance that the drop is more than 2 points. */
  readonly probabilityOver2: Probability;
  /** Chance that it lies within 3 points of none. */
  readonly probabilitySame: Probability;
}

/** The two ends of a 90 % interval. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** A calendar week of the index. */
export interface IndexWeek extends PointsEstimate {
  /** ISO 8601 name, `2026-W05`. */
  readonly week: string;
  /** Its Monday. */
  readonly monday: IsoDate;
  /** Make percentages, standardised. */
  readonly relaxed: number;
  readonly pressured: number;
  /** Of these two. */
  readonly spans: ByCondition<Span>;
  readonly shots: ByCondition<number>;
  /** No shot in this week: the figures are carried over from its neighbours, and no point is to be drawn. */
  readonly empty: boolean;
}

/** A place, as it was shot and as the model sees it. */
export interface IndexPlace extends Place, PointsEstimate {
  /** Share of the mix. */
  readonly weight: Probability;
  readonly raw: ByCondition<Tally>;
  /** Make percentages, standardised: pulled towards what the other places say. */
  readonly relaxed: number;
  readonly pressured: number;
}

export interface IndexGroup extends PointsEstimate {
  readonly group: ShotGroup;
  readonly weight: Probability;
  /** Chance that pressure takes most from this group; 1 where there is no other. */
  readonly dearest: Probability;
}

/** Points lost by turning one ingredient on, all else as usual. */
export interface IndexIngredient extends PointsEstimate {
  readonly ingredient: Ingredient;
  /** Pressured shots with and without it. */
  readonly shots: { readonly on: number; readonly off: number };
  /** Chance that it costs more than each of the others; 1 where there is no other. */
  readonly dearest: Probability;
}

/** How far the drop moved between two weeks; negative = it shrank. */
export interface Change extends PointsEstimate {
  readonly from: string;
  readonly to: string;
}

export interface ChokeIndex {
  readonly kind: 'index';
  /** Mean over the weeks with a shot. */
  readonly overall: Overall;
  /** Standardised make percentages behind it. */
  readonly relaxed: number;
  readonly pressured: number;
  readonly spans: ByCondition<Span>;
  readonly weeks: readonly IndexWeek[];
  readonly places: readonly IndexPlace[];
  readonly groups: readonly IndexGroup[];
  /** Those that were at times on and at times off, the dearest first. */
  readonly ingredients: readonly IndexIngredient[];
  /** Pressured over relaxed make rate; null where the relaxed rate is below 20 %, since it would mean nothing. */
  readonly ratio: Estimate | null;
  /** Log-odds added by pressure; negative = worse under pressure. */
  readonly logit: Estimate;
  /** From the first week to the last; null within one week. */
  readonly change: Change | null;
  /** Share of the mix that was ever shot under pressure. */
  readonly seen: Probability;
  /** The mix it is standardised to. */
  readonly mix: readonly PlaceWeight[];
  /** Pressure as it was usually met so far, of the whole record; what it is asked under unless that was kept before. */
  readonly usual: UsualPressure;
  readonly hyper: { readonly mean: Spreads; readonly sd: Spreads };
  readonly seed: number;
  /** Goes with the number: that it is still pulled towards 0. Null where it is hardly so. */
  readonly pulled: string | null;
  /** What else a reader should know about these numbers, in plain sentences. */
  readonly notes: readonly string[];
}
