/** How long nothing may have been asked for before the device counts as idle. */
const QUIET_MS = 1200;

/** Calls back once the device has had nothing to do for a moment; returns the way to call it off. */
export function whenIdle(wake: () => void): () => void {
  let idle: number | null = null;
  const timer = setTimeout(() => {
    // Not every browser tells when it is idle.
    if ('requestIdleCallback' in window) idle = requestIdleCallback(wake, { timeout: 5 * QUIET_MS });
    else wake();
  }, QUIET_MS);
  return () => {
    clearTimeout(timer);
    if (idle !== null) cancelIdleCallback(idle);
  };
}
