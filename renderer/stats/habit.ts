import { addDays, daysBetween, parseIsoDate } from '../basics/days.ts';
import { byText } from '../basics/order.ts';
import type { IsoDate } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import { roundTally } from '../log/roundCells.ts';
import type { Habit } from './planning.ts';

/** How a shooter has trained lately. */
export interface SeenHabit extends Habit {
  /** Too little to go by: sessions and shots a week are {@link ASSUMED}, not seen. */
  readonly assumed: boolean;
}

/** Three sessions a week with 50 relaxed shots each. Our own choice, for a shooter who has just begun. */
export const ASSUMED = { sessionsPerWeek: 3, relaxedPerWeek: 150, pressuredPerWeek: 0 };
/** A record younger than the days looked at says how often one shoots from so many sessions over so many days on. */
const LEAST_VISITS = 4;
const LEAST_DAYS = 14;

/**
 * The habit in the latest days of one shooter's record, 8 weeks unless told: counted back from its last shot, not from
 * today, so that a pause does not read as a habit.
 *
 * The make rate is (makes + 2)/(attempts + 4), which is never 0 or 1, and one half where there is no relaxed shot: that
 * rate takes the most shots.
 */
export function habitOf(rounds: Iterable<Round>, lastDays = 56): SeenHabit {
  const real = new Map<IsoDate, boolean>();
  const isDay = (date: IsoDate): boolean => {
    const known = real.get(date) ?? parseIsoDate(date) !== null;
    real.set(date, known);
    return known;
  };
  const shot = [...rounds]
    .filter(({ date }) => isDay(date))
    .map((round) => ({ round, tally: roundTally(round) }))
    .filter(({ tally }) => tally.attempts > 0)
    .toSorted((a, b) => byText(a.round.date, b.round.date));
  const first = shot[0]?.round.date;
  const last = shot.at(-1)?.round.date;
  const from = last === undefined ? '' : addDays(last, 1 - lastDays);
  const relaxed = { makes: 0, attempts: 0 };
  let pressured = 0;
  const sessions = new Set<string>();
  for (const { round, tally } of shot) {
    if (round.date < from) continue;
    sessions.add(`${round.date} ${round.session}`);
    if (round.condition === 'pressured') {
      pressured += tally.attempts;
    } else {
      relaxed.makes += tally.makes;
      relaxed.attempts += tally.attempts;
    }
  }
  const relaxedRate = (relaxed.makes + 2) / (relaxed.attempts + 4);
  const weeks =
    first === undefined || last === undefined ? null : weeksSeen(first, last, sessions.size, from);
  if (weeks === null) return { ...ASSUMED, relaxedRate, assumed: true };
  return {
    sessionsPerWeek: sessions.size / weeks,
    relaxedPerWeek: relaxed.attempts / weeks,
    pressuredPerWeek: pressured / weeks,
    relaxedRate,
    assumed: false,
  };
}

/** @returns null where the record is too young to tell */
function weeksSeen(first: IsoDate, last: IsoDate, sessions: number, from: IsoDate): number | null {
  const span = daysBetween(first, last);
  if (first < from) return (daysBetween(from, last) + 1) / 7;
  if (sessions < LEAST_VISITS || span < LEAST_DAYS) return null;
  // It begins and ends with a session: n sessions are n − 1 waits.
  return ((span / 7) * sessions) / (sessions - 1);
}
