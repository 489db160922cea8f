import type { ShotKind, SpotName } from '../../court/spots.ts';
import type { UsualPressure } from '../../pressure/ingredients.ts';
import { at } from '../matrix.ts';
import type { ModelData } from './modelData.ts';
import { meanOrder, ORDER_COLUMNS, WARM_TIRED } from './orderCurve.ts';
import { usualPressure } from './usualPressure.ts';

/*
 * What the index is asked about: a fixed mix of shots, by a shooter who is warm and not yet tired, under pressure as
 * this shooter usually meets it. A mix or a pressure that moved with the record would move the index, past weeks too,
 * without any change in the shooter; so both can be kept.
 */

/** A place's share of a mix. */
export interface PlaceWeight {
  readonly spot: SpotName;
  readonly shot: ShotKind;
  /** Any unit; only shares count. */
  readonly weight: number;
}

/** The mix of all relaxed shots, free throws alone, or a mix that was fixed before. */
export type MixChoice = 'relaxed' | 'free-throws' | readonly PlaceWeight[];

export interface Reference {
  /** Share of each place of the data; sums to 1. */
  readonly weights: Float64Array;
  /** Share of the mix that was ever shot under pressure. */
  readonly seen: number;
  /** Order columns of a shot in mid-session. */
  readonly order: Float64Array;
  readonly pressure: UsualPressure;
}

/** Place in the session the index is asked for: warm, and before anyone tires. */
const MID_SESSION = 50;

/**
 * @param pressure as the shooter usually meets it; kept from some moment on, or else by the whole record
 * @returns null where the record holds nothing of the mix
 */
export function referenceOf(
  data: ModelData,
  mix: MixChoice,
  pressure: UsualPressure = usualPressure(data),
): Reference | null {
  const raw = data.places.map(({ spot, shot }, place) => {
    if (mix === 'free-throws') return shot === 'free-throw' ? shotsAt(data, place, 0) : 0;
    if (mix === 'relaxed') return shotsAt(data, place, 0);
    return mix.find((one) => one.spot === spot && one.shot === shot)?.weight ?? 0;
  });
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  if (!(total > 0)) return null;
  const weights = Float64Array.from(raw, (weight) => weight / total);
  const order = new Float64Array(ORDER_COLUMNS);
  meanOrder(MID_SESSION, MID_SESSION + 1, order);
  // Asked as wholly warm and wholly fresh.
  order.fill(0, 0, WARM_TIRED);
  let seen = 0;
  for (let place = 0; place < weights.length; place += 1) {
    if (shotsAt(data, place, 1) > 0) seen += at(weights, place);
  }
  return { weights, seen: Math.min(1, seen), order, pressure };
}

/** The mix of a reference, to be fixed and asked for again. */
export function mixOf({ places }: ModelData, { weights }: Reference): PlaceWeight[] {
  return places
    .map(({ spot, shot }, place) => ({ spot, shot, weight: at(weights, place) }))
    .filter(({ weight }) => weight > 0);
}

function shotsAt({ cells }: ModelData, place: number, condition: 0 | 1): number {
  let shots = 0;
  for (let cell = 0; cell < cells.count; cell += 1) {
    if (cells.place[cell] === place && cells.pressured[cell] === condition) shots += at(cells.attempts, cell);
  }
  return shots;
}
