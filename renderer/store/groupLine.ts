import type { ShooterId } from '../basics/ids.ts';
import type { Moment } from '../log/begin.ts';
import type { Book } from '../log/book.ts';
import { rungOf, stepsUp, type Rung } from '../pressure/ladder.ts';
import { looksLikeMoney } from '../pressure/money.ts';
import { hasMinor, lineFor, stakesFor } from './line.ts';

/* What may be on the line where several play together, and who had better not play today. */

/** Everybody sees everybody's shots. */
export function groupRung(stake: string | null): Rung {
  return rungOf({ stake, seen: 'watched' });
}

/** How things stand for shooters who are about to play together. */
export interface GroupLine {
  /** Someone under 18 plays, so nothing is on the line. */
  readonly young: boolean;
  /** Who has not said whether they are under 18: with nobody left here, something may be on the line. */
  readonly ageless: readonly ShooterId[];
  /** A brake of somebody's keeps stakes off today. */
  readonly held: boolean;
  /** Who has not said how their body is. */
  readonly unasked: readonly ShooterId[];
  /** For whom being watched would be a step up on a day with a brake on. */
  readonly sitOut: readonly ShooterId[];
}

export function groupLine(book: Book, shooters: readonly ShooterId[], now: Moment): GroupLine {
  const lines = shooters.map((shooter) => ({ shooter, line: lineFor(book, shooter, now) }));
  const above = (rung: Rung) =>
    lines.filter(({ line }) => stepsUp(line.highest, rung) > 0).map(({ shooter }) => shooter);
  return {
    young: hasMinor(book, shooters),
    ageless: shooters.filter((shooter) => {
      const known = book.shooters.get(shooter);
      return known !== undefined && known.under18 === undefined && !known.demo;
    }),
    held: above('forfeit').length > 0,
    unasked: lines.filter(({ line }) => line.body === null).map(({ shooter }) => shooter),
    sitOut: above(groupRung(null)),
  };
}

/** Whether anything may be on the line; null where nobody knows before everybody has told their age. */
export function stakeOpen(book: Book, shooters: readonly ShooterId[], line: GroupLine): boolean | null {
  if (line.held || stakesFor(book, shooters) !== 'open') return false;
  return line.ageless.length === 0 ? true : null;
}

/** Why a game of several is not started as it is set up. */
export type GroupRefusal =
  /** Somebody's body has not been asked about. */
  | 'unasked'
  | 'money'
  /** Something is on the line, and somebody is under 18 or has not said. */
  | 'age'
  /** Something is on the line, and somebody's brake is on. */
  | 'brake'
  /** Being watched is a step up for somebody with a brake on. */
  | 'watched';

/** The first reason not to start, or null. @param stake in the shooters' words; null for none */
export function groupRefusal(
  book: Book,
  shooters: readonly ShooterId[],
  stake: string | null,
  now: Moment,
): GroupRefusal | null {
  const line = groupLine(book, shooters, now);
  if (line.unasked.length > 0) return 'unasked';
  if (line.sitOut.length > 0) return 'watched';
  if (stake === null) return null;
  if (looksLikeMoney(stake)) return 'money';
  if (line.held) return 'brake';
  return stakeOpen(book, shooters, line) === true ? null : 'age';
}
