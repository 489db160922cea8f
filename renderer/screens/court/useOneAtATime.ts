import { useRef } from 'react';

/** Fingers bounce, and two hands may tap for one shot. No two shots of one shooter come this close. */
const APART_MS = 300;

/** Runs a tap unless the last one that ran was a moment ago. @param when the event's own time stamp, in ms */
export function useOneAtATime(): (when: number, tap: () => void) => void {
  const last = useRef(-Infinity);
  return (when, tap) => {
    if (when - last.current < APART_MS) return;
    last.current = when;
    tap();
  };
}
