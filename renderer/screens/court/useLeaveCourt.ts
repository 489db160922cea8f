import { useEffect } from 'react';

import { useDoors } from '../gymContext.ts';

/** Pauses what is live when the screen is left or the page goes out of sight, and keeps the display awake meanwhile. */
export function useLeaveCourt(): void {
  const { court, display } = useDoors();
  useEffect(() => {
    display.keepAwake(true);
    const hidden = () => {
      if (document.hidden) court.leave('hidden');
      else display.keepAwake(true);
    };
    document.addEventListener('visibilitychange', hidden);
    return () => {
      document.removeEventListener('visibilitychange', hidden);
      display.keepAwake(false);
      court.leave('asked');
    };
  }, [court, display]);
}
