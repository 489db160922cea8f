import type { Probability } from '../../basics/units.ts';
import type { ShotKind, SpotName } from '../../court/spots.ts';
import type { Figures } from '../../store/figures.ts';

/** A place and its share of a mix. */
export interface MixShare {
  readonly spot: SpotName;
  readonly shot: ShotKind;
  readonly share: Probability;
  /** Never shot under pressure: its drop is judged by the other places. */
  readonly unseen: boolean;
}

interface Weighted extends Pick<MixShare, 'spot' | 'shot'> {
  readonly weight: number;
}

/** The shares of a mix, the largest first. Weights of 0 are left out. */
export function mixShares(mix: readonly Weighted[], spots: Figures['spots']): MixShare[] {
  const total = mix.reduce((sum, { weight }) => sum + weight, 0);
  return mix
    .filter(({ weight }) => weight > 0)
    .map(({ spot, shot, weight }) => ({
      spot,
      shot,
      share: weight / total,
      unseen: !wasPressured(spots, spot, shot),
    }))
    .toSorted((a, b) => b.share - a.share);
}

/** All relaxed shots so far. */
export function mixOfToday(spots: Figures['spots']): Weighted[] {
  return spots.flatMap(({ spot, kinds }) =>
    kinds.map(({ shot, relaxed }) => ({ spot, shot, weight: relaxed.attempts })),
  );
}

function wasPressured(spots: Figures['spots'], spot: SpotName, shot: ShotKind): boolean {
  const kinds = spots.find((place) => place.spot === spot)?.kinds;
  return (kinds?.find((kind) => kind.shot === shot)?.pressured.attempts ?? 0) > 0;
}
