import type { Rng } from '../../renderer/basics/chance.ts';
import type { Probability } from '../../renderer/basics/units.ts';
import type { Round } from '../../renderer/log/book.ts';
import { phase, settled, type Evening } from './evening.ts';

/** One shot as it was tapped. */
export interface Tapped {
  readonly round: string;
  readonly made: boolean;
}

interface Watching {
  /** Looks at the round on court before each shot. */
  readonly before?: (round: Round) => void;
}

/** No game of a test takes longer. */
const MOST_SHOTS = 500;

/**
 * A simulated shooter plays what is on court to its end, as a person would: says go where the court waits, shoots, taps.
 *
 * @param rate chance of a make, whoever's turn it is
 */
export async function playOut(
  night: Evening,
  rng: Rng,
  rate: Probability,
  { before }: Watching = {},
): Promise<Tapped[]> {
  const tapped: Tapped[] = [];
  const onCourt = () => night.gym.store.getState().ahead.open;
  for (let round = onCourt(); round !== null; round = onCourt()) {
    if (tapped.length > MOST_SHOTS) throw new Error('a game without an end');
    if (phase(night) === 'ready') {
      night.court.enter();
      await night.begin();
      continue;
    }
    before?.(round);
    const made = rng.chance(rate);
    night.court.shot(made, null);
    tapped.push({ round: round.id, made });
    await settled();
  }
  return tapped;
}
