import { useEffect } from 'react';

import type { MissSide } from '../../log/events.ts';
import { useDoors } from '../gymContext.ts';

interface Key {
  readonly made: boolean;
  readonly side: MissSide | null;
}

const SHOTS: Readonly<Record<string, Key>> = {
  ArrowRight: { made: true, side: null },
  ArrowLeft: { made: false, side: null },
  ArrowUp: { made: false, side: 'long' },
  ArrowDown: { made: false, side: 'short' },
  'Shift ArrowLeft': { made: false, side: 'left' },
  'Shift ArrowRight': { made: false, side: 'right' },
};

/** The keys of the court: arrows for make and miss, Backspace to undo, P to pause, N for nothing at the buzzer. */
export function useCourtKeys(): void {
  const { court, gym } = useDoors();
  useEffect(() => {
    const pressed = (key: KeyboardEvent) => {
      const round = gym.store.getState().ahead.open;
      if (!round || key.ctrlKey || key.metaKey || key.altKey) return;
      const shot = SHOTS[`${key.shiftKey ? 'Shift ' : ''}${key.key}`];
      if (shot && round.entry === 'each-shot') {
        key.preventDefault();
        // A held key is one shot, not many.
        if (!key.repeat) court.shot(shot.made, shot.side);
      } else if (key.key === 'Backspace' && !key.repeat) {
        key.preventDefault();
        void court.undo(round);
      } else if (key.key.toLowerCase() === 'p' && !key.repeat) {
        court.leave('asked');
      } else if (key.key.toLowerCase() === 'n' && !key.repeat && round.entry === 'each-shot') {
        court.nothingInTheAir();
      }
    };
    window.addEventListener('keydown', pressed);
    return () => window.removeEventListener('keydown', pressed);
  }, [court, gym]);
}
