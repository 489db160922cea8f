import type { IsoDate } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import { paceOf, type Pace } from '../stats/pace.ts';

/**
 * How long a shooter likely takes over a shot against a round clock. It is the shooter's own once enough of their shots
 * are known; those against no clock tell of it too.
 *
 * @param rounds the shooter's
 * @param on the day it is asked for
 */
export function clockPace(rounds: readonly Round[], on: IsoDate): Pace {
  const { overall, onClock } = paceOf(rounds.filter(shotAlone), on);
  return { ...onClock, own: overall.own };
}

/** Where others shoot in between, or each shot has a clock of its own, a round tells nothing of the pace. */
function shotAlone({ group, pressure }: Round): boolean {
  return group === null && pressure?.game?.plan.family !== 'last shot';
}
