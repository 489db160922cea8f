import { oncePer } from '../basics/remembered.ts';
import { type Condition, MISS_SIDES, type MissSide } from '../log/events.ts';
import type { Round } from '../log/book.ts';

/** Misses of one condition by where they went. */
export type MissCounts = Readonly<Record<MissSide, number>>;

/**
 * Where misses went, relaxed and pressured, over the shots for which the shooter said so; null where they never did.
 */
export function missFigures(rounds: readonly Round[]): Readonly<Record<Condition, MissCounts>> | null {
  const counts = { relaxed: noMisses(), pressured: noMisses() };
  let said = false;
  for (const round of rounds) {
    const misses = missesOf(round);
    if (!misses) continue;
    said = true;
    const sums = counts[round.condition];
    for (const side of MISS_SIDES) sums[side] += misses[side];
  }
  return said ? counts : null;
}

/** Of one round, counted once; null where nobody said. */
const missesOf = oncePer(({ entries }: Round): MissCounts | null => {
  const counts = noMisses();
  let said = false;
  for (const entry of entries) {
    if (entry.kind !== 'shot' || entry.side === null) continue;
    counts[entry.side] += 1;
    said = true;
  }
  return said ? counts : null;
});

function noMisses(): Record<MissSide, number> {
  return { short: 0, long: 0, left: 0, right: 0 };
}
