import { useStore } from 'zustand';

import { clockFor } from '../../games/clocks.ts';
import type { Round } from '../../log/book.ts';
import { leftAt, writeClock, type GameClock } from '../../store/court.ts';
import { useDoors } from '../gymContext.ts';
import { useShownTime } from './useShownTime.ts';

/** The game clock, drawn from the audio clock. */
export function ClockFigure({ clock, round }: { readonly clock: GameClock; readonly round: Round }) {
  const { court } = useDoors();
  const phase = useStore(court.store, (state) => state.phase);
  const now = useShownTime();
  const left = phase === 'buzzer' ? 0 : leftAt(clock, now);
  return (
    <div className={left <= 5 ? 'going-on-figure last-seconds' : 'going-on-figure'}>
      <dt>{clockWords(round)}</dt>
      <dd>{writeClock(left, clock.full)}</dd>
    </div>
  );
}

function clockWords(round: Round): string {
  if (round.pressure?.game?.plan.family === 'last shot') return 'game clock';
  return clockFor(round)?.kind === 'round' ? 'round clock' : 'shot clock';
}
