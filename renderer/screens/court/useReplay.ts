import { useMemo } from 'react';
import { useStore } from 'zustand';

import type { Seconds } from '../../basics/units.ts';
import { fallenBy, secondsIn, shotTimes } from '../../games/replay.ts';
import type { Round } from '../../log/book.ts';
import type { Opponent } from '../../pressure/gamePlan.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { useShownTime } from './useShownTime.ts';

/** How far an earlier round had come by this second. */
interface Replay {
  readonly makes: number;
  readonly shots: number;
  /** Its shots that have fallen and are still to be answered for: the duel counts shot for shot. */
  readonly further: readonly boolean[];
}

/** When the shots of the earlier round fell that is played against; null for other opponents, and where the log cannot tell. */
export function useReplayTimes(against: Opponent): readonly Seconds[] | null {
  const earlier = useGym(({ book }) =>
    against.kind === 'own round' ? book.rounds.get(against.round) : undefined,
  );
  return useMemo(() => {
    const times = earlier ? shotTimes(earlier) : null;
    return against.kind === 'own round' && times?.length === against.made.length ? times : null;
  }, [earlier, against]);
}

/**
 * An earlier round of the shooter's own, running along in real time. It is never shown behind what the duel has counted.
 *
 * @param counted shots of it that the duel has counted
 */
export function useReplay(
  round: Round,
  made: readonly boolean[],
  times: readonly Seconds[],
  counted: number,
): Replay {
  const { court, gym } = useDoors();
  const phase = useStore(court.store, (state) => state.phase);
  // Asked for so that time is drawn as it goes by.
  useShownTime();
  const seconds = secondsIn(round, phase === 'live' ? gym.moment().at : null);
  const fallen = made.slice(0, Math.max(counted, seconds === null ? 0 : fallenBy(times, seconds)));
  return {
    makes: fallen.filter(Boolean).length,
    shots: fallen.length,
    further: fallen.slice(counted),
  };
}
