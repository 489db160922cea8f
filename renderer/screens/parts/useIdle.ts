import { useEffect, useRef } from 'react';

/** How long a screen has stood before the device is asked whether it has nothing to do, in ms. */
const SETTLED = 400;

/** Does something once the device has nothing to do; anew whenever `about` changes. */
export function useIdle(work: () => void, about: unknown): void {
  const latest = useRef(work);
  useEffect(() => {
    latest.current = work;
  });
  useEffect(() => {
    let idle: number | null = null;
    const timer = setTimeout(() => {
      // Safari has no idle callback.
      if ('requestIdleCallback' in window) idle = requestIdleCallback(() => latest.current());
      else latest.current();
    }, SETTLED);
    return () => {
      clearTimeout(timer);
      if (idle !== null) cancelIdleCallback(idle);
    };
  }, [about]);
}
