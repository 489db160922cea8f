import { useLayoutEffect, useRef, useState, type RefObject } from 'react';

import { usePrinting } from './usePrinting.ts';

/** Used until the first measurement, and where nothing can be measured. */
const UNMEASURED = 720;
/**
 * What fits between the margins of upright A4 and US letter, 672 CSS pixels, and is drawn to be put there at seven ninths
 * of its size (print.css): paper is held nearer than a screen, and more of it goes on a sheet.
 */
const PAPER = 864;

/**
 * The width of an element in CSS pixels, kept up to date. Charts are drawn to it one to one, so that their text keeps
 * its size whatever the screen. On paper nothing can be measured, and it is the width of the page.
 *
 * @param beside what else stands in the row on paper
 */
export function useWidth<E extends HTMLElement>(beside = 0): [RefObject<E | null>, number] {
  const element = useRef<E>(null);
  const [width, setWidth] = useState(UNMEASURED);
  const printing = usePrinting();
  useLayoutEffect(() => {
    const measured = element.current;
    if (!measured) return undefined;
    const measure = () => setWidth(Math.max(1, Math.floor(measured.clientWidth)));
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(measured);
    return () => watcher.disconnect();
  }, []);
  return [element, printing ? PAPER - beside : width];
}
