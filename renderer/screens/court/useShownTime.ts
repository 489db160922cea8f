import { useEffect, useState } from 'react';

import type { Seconds } from '../../basics/units.ts';
import { useDoors } from '../gymContext.ts';

/** The audio clock as it reaches the ear, drawn anew ten times a second. */
export function useShownTime(): Seconds {
  const { court } = useDoors();
  const [now, setNow] = useState<Seconds>(() => court.sound.shownNow());
  useEffect(() => {
    let frame = 0;
    const draw = () => {
      setNow((old) => {
        const next = court.sound.shownNow();
        // Tenths are all that is shown, so only a new tenth is drawn.
        return Math.floor(next * 20) === Math.floor(old * 20) ? old : next;
      });
      frame = requestAnimationFrame(draw);
    };
    frame = requestAnimationFrame(draw);
    return () => cancelAnimationFrame(frame);
  }, [court]);
  return now;
}
