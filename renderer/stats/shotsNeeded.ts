import type { Points, Probability } from '../basics/units.ts';
import type { ByCondition } from './drop.ts';
import { normalQuantile } from './special.ts';

/** How sure a plan is to be. */
export interface Sureness {
  /** Chance that a drop of the planned size shows; 0.8 unless told. */
  readonly power?: Probability;
  /** Level of the two-sided interval it must lift off 0; 0.9 unless told, which is one-sided 5 %. */
  readonly level?: Probability;
}

/** No one is asked to shoot more than this; a plan beyond it is no plan. */
const MOST_SHOTS = 1e7;

/**
 * About how many more shots until a drop of this size would show: the fewest in all. Relaxed shots already there
 * are used; more of them are asked for only where there are fewer than an even split needs.
 *
 * From the normal formula for two proportions of unequal size (Fleiss, Statistical Methods for Rates and
 * Proportions, 2nd ed. 1981, ch. 3, without continuity correction): it shows once
 * d = z_α √(p̄ q̄ (1/nR + 1/nP)) + z_β √(pR qR/nR + pP qP/nP). Day-to-day variation is not in it, so "about".
 *
 * @param points the drop to be seen, percentage points, above 0
 * @param relaxedRate relaxed make rate, 0 to 1
 * @param have shots there already
 * @returns more shots for each condition, rounded up to tens for speaking; null where a rate this low cannot drop
 *   that far
 * @throws RangeError unless points is above 0 and the chances lie between 0 and 1
 */
export function shotsToSee(
  points: Points,
  relaxedRate: Probability,
  have: ByCondition<number>,
  sureness: Sureness = {},
): ByCondition<number> | null {
  const shows = showing(points, relaxedRate, sureness);
  if (!shows) return null;
  const even = fewest((n) => shows(n, n));
  let { relaxed, pressured } = have;
  if (relaxed < even && pressured < even) {
    relaxed = even;
    pressured = even;
  } else if (relaxed >= even) {
    pressured = Math.max(
      pressured,
      fewest((n) => shows(relaxed, n)),
    );
  } else {
    relaxed = Math.max(
      relaxed,
      fewest((n) => shows(n, pressured)),
    );
  }
  return { relaxed: tens(relaxed - have.relaxed), pressured: tens(pressured - have.pressured) };
}

type Shows = (relaxed: number, pressured: number) => boolean;

function showing(
  points: Points,
  relaxedRate: Probability,
  { power = 0.8, level = 0.9 }: Sureness,
): Shows | null {
  if (!(points > 0)) throw new RangeError(`Plan for a drop above 0 points, not ${points}`);
  if (!(relaxedRate >= 0 && relaxedRate <= 1)) {
    throw new RangeError(`A make rate lies between 0 and 1, not ${relaxedRate}`);
  }
  const zAlpha = normalQuantile((1 + level) / 2);
  const zBeta = normalQuantile(power);
  const drop = points / 100;
  const pR = relaxedRate;
  const pP = pR - drop;
  if (pP < 0) return null;
  return (nR, nP) => {
    const mean = (nR * pR + nP * pP) / (nR + nP);
    const underNone = mean * (1 - mean) * (1 / nR + 1 / nP);
    const underDrop = (pR * (1 - pR)) / nR + (pP * (1 - pP)) / nP;
    return zAlpha * Math.sqrt(underNone) + zBeta * Math.sqrt(underDrop) <= drop;
  };
}

/** The smallest whole n from 1 for which `enough` holds; it must hold for all larger n too. */
function fewest(enough: (n: number) => boolean): number {
  let high = 1;
  while (!enough(high) && high < MOST_SHOTS) high *= 2;
  let low = Math.floor(high / 2);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function tens(shots: number): number {
  return Math.max(0, Math.ceil(shots / 10) * 10);
}
