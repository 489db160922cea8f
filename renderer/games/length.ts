import { present } from '../basics/invariant.ts';
import type { Probability } from '../basics/units.ts';
import type { Level } from './levels.ts';

/** How many more turns a game takes. */
export interface Length {
  readonly mean: number;
  /** Nine games in ten are over after this many turns or fewer. */
  readonly ninetieth: number;
  /** No game takes more. */
  readonly most: number;
}

interface From {
  readonly turn: number;
  /** Index of the state. */
  readonly at: number;
  /** Weight of each possible day. */
  readonly weights: readonly number[];
}

/** Runs the game forward from a state, all days side by side, and notes when it ends. */
export function lengthOf(
  levels: readonly Level<unknown>[],
  rates: readonly (readonly Probability[])[],
  { turn: first, at, weights }: From,
  time?: readonly Probability[],
): Length {
  /** Chance of just so many turns more. */
  const ends = new Float64Array(levels.length - first);
  const days = weights.length;
  /** State × day. */
  let here = new Float64Array(present(levels[first], 'a turn').states.length * days);
  here.set(weights, at * days);
  for (let turn = first; turn < levels.length; turn += 1) {
    const { states, shot, make, miss } = present(levels[turn], 'a turn');
    const lasts = time?.[turn] ?? 1;
    const next = new Float64Array((levels[turn + 1]?.states.length ?? 0) * days);
    let ended = 0;
    for (let state = 0; state < states.length; state += 1) {
      const up = make[state] as number;
      const down = miss[state] as number;
      for (let day = 0; day < days; day += 1) {
        const chance = here[state * days + day] as number;
        if (chance === 0) continue;
        const stays = up === -1 ? 0 : lasts * chance;
        ended += chance - stays;
        if (stays === 0) continue;
        const p = (rates[day] as readonly Probability[])[shot[state] as number] as number;
        next[up * days + day] = (next[up * days + day] as number) + p * stays;
        next[down * days + day] = (next[down * days + day] as number) + (1 - p) * stays;
      }
    }
    ends[turn - first] = ended;
    here = next;
  }
  let [mean, sum, ninetieth, most] = [0, 0, -1, 0];
  for (const [turns, chance] of ends.entries()) {
    mean += turns * chance;
    sum += chance;
    if (chance > 0) most = turns;
    // A hair below, so that rounding cannot push it a turn further.
    if (ninetieth === -1 && sum >= 0.9 - 1e-12) ninetieth = turns;
  }
  return { mean, ninetieth: Math.max(0, ninetieth), most };
}
