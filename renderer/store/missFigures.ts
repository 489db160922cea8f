import type { Condition, MissSide } from '../log/events.ts';
import type { Round } from '../log/book.ts';

/** Misses of one condition by where they went. */
export type MissCounts = Readonly<Record<MissSide, number>>;

/**
 * Where misses went, relaxed and pressured, over the shots for which the shooter said so; null where they never did.
 */
export function missFigures(rounds: readonly Round[]): Readonly<Record<Condition, MissCounts>> | null {
  const counts = { relaxed: noMisses(), pressured: noMisses() };
  let said = 0;
  for (const round of rounds) {
    for (const entry of round.entries) {
      if (entry.kind !== 'shot' || entry.side === null) continue;
      counts[round.condition][entry.side] += 1;
      said += 1;
    }
  }
  return said === 0 ? null : counts;
}

function noMisses(): Record<MissSide, number> {
  return { short: 0, long: 0, left: 0, right: 0 };
}
