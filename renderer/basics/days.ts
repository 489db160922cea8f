import type { EpochMs, IsoDate } from './units.ts';

const DAY_MS = 86_400_000;
const ISO_DATE = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Milliseconds of UTC midnight of a calendar day, or null where the text is no real day (ISO 8601 `YYYY-MM-DD`). */
export function parseIsoDate(text: string): EpochMs | null {
  const parts = ISO_DATE.exec(text);
  if (!parts) return null;
  const [year, month, day] = parts.slice(1).map(Number) as [number, number, number];
  const at = Date.UTC(year, month - 1, day);
  const back = new Date(at);
  const real =
    back.getUTCFullYear() === year && back.getUTCMonth() === month - 1 && back.getUTCDate() === day;
  return real ? at : null;
}

/** The calendar day at a moment, seen from a place `zone` minutes east of UTC. */
export function isoDateAt(at: EpochMs, zone: number): IsoDate {
  return new Date(at + zone * 60_000).toISOString().slice(0, 10);
}

/** A week as ISO 8601 numbers it: Monday first, week 1 holds 4 January. `year` is the week's own year. */
export interface IsoWeek {
  readonly year: number;
  readonly week: number;
  /** 1 Monday .. 7 Sunday */
  readonly day: number;
}

/** The ISO 8601 week of a calendar day. @throws RangeError where `date` is no real day */
export function isoWeek(date: IsoDate): IsoWeek {
  const at = midnight(date);
  const day = ((new Date(at).getUTCDay() + 6) % 7) + 1;
  // A week belongs to the year of its Thursday.
  const thursday = at + (4 - day) * DAY_MS;
  const year = new Date(thursday).getUTCFullYear();
  const week = Math.floor((thursday - Date.UTC(year, 0, 1)) / DAY_MS / 7) + 1;
  return { year, week, day };
}

/** `2026-W05`, as ISO 8601 writes a week. */
export function isoWeekName(date: IsoDate): string {
  const { year, week } = isoWeek(date);
  return `${year}-W${String(week).padStart(2, '0')}`;
}

/** Days from one date to another. @throws RangeError where either is no real day */
export function daysBetween(from: IsoDate, to: IsoDate): number {
  return (midnight(to) - midnight(from)) / DAY_MS;
}

/** The day `days` later. @throws RangeError where `date` is no real day */
export function addDays(date: IsoDate, days: number): IsoDate {
  return isoDateAt(midnight(date) + days * DAY_MS, 0);
}

function midnight(date: IsoDate): EpochMs {
  const at = parseIsoDate(date);
  if (at === null) throw new RangeError(`Not a calendar day: ${date}`);
  return at;
}
