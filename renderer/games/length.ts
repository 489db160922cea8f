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

/** Runs the game forward from a state, day by day, and notes when it ends. */
export function lengthOf(
  levels: readonly Level<unknown>[],
  rates: readonly (readonly Probability[])[],
  { turn: first, at, weights }: From,
  time?: readonly Probability[],
): Length {
  /** Chance of just so many turns more. */
  const ends = new Float64Array(levels.length - first);
  for (const [day, weight] of weights.entries()) {
    const dayRates = present(rates[day], 'a day');
    let here = new Map([[at, weight]]);
    for (let turn = first; here.size > 0; turn += 1) {
      const { shot, make, miss } = present(levels[turn], 'a turn');
      const lasts = time?.[turn] ?? 1;
      const next = new Map<number, number>();
      for (const [state, chance] of here) {
        const up = make[state] as number;
        const stays = up === -1 ? 0 : lasts * chance;
        ends[turn - first] = (ends[turn - first] as number) + chance - stays;
        if (stays === 0) continue;
        const p = dayRates[shot[state] as number] as number;
        const down = miss[state] as number;
        next.set(up, (next.get(up) ?? 0) + p * stays);
        next.set(down, (next.get(down) ?? 0) + (1 - p) * stays);
      }
      here = next;
    }
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
