import { useLayoutEffect } from 'react';

import { usePrinting } from '../../charts/usePrinting.ts';
import { todayAt } from '../../store/today.ts';
import { yearDayWords } from '../dayWords.ts';
import { useDoors } from '../gymContext.ts';

/** On paper alone: the day it was printed, under the title and, with the title, at the head of every further sheet. */
export function PrintedOn({ title }: { readonly title: string }) {
  const { gym } = useDoors();
  // A screen may stand open for days before it is printed; asked for anew then.
  usePrinting();
  const day = yearDayWords(todayAt(gym));
  useLayoutEffect(() => {
    // The margin of a sheet is written by the style sheet alone, which reads this.
    const sheet = `${title} · printed on ${day}`.replaceAll(/["\\]/g, '\\$&');
    document.documentElement.style.setProperty('--sheet', `"${sheet}"`);
  }, [title, day]);
  return <p className="printed">Printed on {day}</p>;
}
