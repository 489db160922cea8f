import { useStore } from 'zustand';

import type { ClockKind } from '../../pressure/ingredients.ts';
import { leftAt, writeClock, type GameClock } from '../../store/court.ts';
import { useDoors } from '../gymContext.ts';
import { useShownTime } from './useShownTime.ts';

/** The game clock, drawn from the audio clock. */
export function ClockFigure({ clock, kind }: { readonly clock: GameClock; readonly kind: ClockKind }) {
  const { court } = useDoors();
  const phase = useStore(court.store, (state) => state.phase);
  const now = useShownTime();
  const left = phase === 'buzzer' ? 0 : leftAt(clock, now);
  return (
    <div className={left <= 5 ? 'going-on-figure last-seconds' : 'going-on-figure'}>
      <dt>{kind === 'round' ? 'round clock' : 'shot clock'}</dt>
      <dd>{writeClock(left, clock.full)}</dd>
    </div>
  );
}
