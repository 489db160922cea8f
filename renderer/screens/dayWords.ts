import { parseIsoDate } from '../basics/days.ts';
import type { IsoDate } from '../basics/units.ts';

const LONG = new Intl.DateTimeFormat('en-GB', {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  timeZone: 'UTC',
});
const WITH_YEAR = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  timeZone: 'UTC',
});
const SHORT = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' });

/** `Wed, 25 Nov 2026` */
export function dayWords(date: IsoDate): string {
  return LONG.format(parseIsoDate(date) ?? undefined);
}

/** `25 Nov 2026` */
export function yearDayWords(date: IsoDate): string {
  return WITH_YEAR.format(parseIsoDate(date) ?? undefined);
}

/** `25 Nov` */
export function shortDayWords(date: IsoDate): string {
  return SHORT.format(parseIsoDate(date) ?? undefined);
}
