import { useLayoutEffect, useRef, useState, type RefObject } from 'react';

/** Used until the first measurement, and where nothing can be measured. */
const UNMEASURED = 720;

/**
 * The width of an element in CSS pixels, kept up to date. Charts are drawn to it one to one, so that their text keeps
 * its size whatever the screen.
 */
export function useWidth<E extends HTMLElement>(): [RefObject<E | null>, number] {
  const element = useRef<E>(null);
  const [width, setWidth] = useState(UNMEASURED);
  useLayoutEffect(() => {
    const measured = element.current;
    if (!measured) return undefined;
    const measure = () => setWidth(Math.max(1, Math.floor(measured.clientWidth)));
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(measured);
    return () => watcher.disconnect();
  }, []);
  return [element, width];
}
