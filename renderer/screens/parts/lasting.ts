import type { Seconds } from '../../basics/units.ts';

/**
 * Tells once something has lasted a while, and when it is over.
 *
 * @returns call it when it is over; before the while was up, nothing was ever told but that
 */
export function tellIfLasting(least: Seconds, tell: (lasting: boolean) => void): () => void {
  const timer = setTimeout(() => tell(true), 1000 * least);
  return () => {
    clearTimeout(timer);
    tell(false);
  };
}
