import type { ShooterId } from '../basics/ids.ts';
import { debtsOf, doublesNext } from '../games/ledger.ts';
import type { Moment } from '../log/begin.ts';
import type { Book } from '../log/book.ts';
import type { PressureSetup } from '../pressure/ingredients.ts';
import {
  brakesOn,
  highestRung,
  rungOf,
  stepsUp,
  suggestRung,
  type BodyCheck,
  type Brake,
  type Rung,
  type Standing,
  type Suggestion,
} from '../pressure/ladder.ts';
import { looksLikeMoney } from '../pressure/money.ts';
import { fitsPolicy, stakePolicy, type StakePolicy } from '../pressure/stakes.ts';
import { bodyNow } from './bodyCheck.ts';
import { ladderStanding } from './ladder.ts';
import type { PressureWish } from './pressureWish.ts';

/* What may be on the line today, and what the app says no to. */

/** How things stand for a shooter who is about to set a pressured round up. */
export interface Line {
  readonly policy: StakePolicy;
  /** Someone under 18 shoots. */
  readonly young: boolean;
  /** Null until it is asked for in this visit. */
  readonly body: BodyCheck | null;
  readonly brakes: readonly Brake[];
  readonly standing: Standing | null;
  readonly suggestion: Suggestion;
  readonly highest: Rung;
}

export function lineFor(book: Book, shooter: ShooterId, now: Moment): Line {
  const body = bodyNow(book, shooter, now);
  const brakes = body ? brakesOn(body) : [];
  const standing = ladderStanding(book, shooter);
  return {
    policy: stakesFor(book, [shooter]),
    young: hasMinor(book, [shooter]),
    body,
    brakes,
    standing,
    suggestion: suggestRung(standing, brakes),
    highest: highestRung(standing, brakes),
  };
}

/** What may be on the line in a round these shooters play together. */
export function stakesFor(book: Book, shooters: readonly ShooterId[]): StakePolicy {
  return stakePolicy(
    shooters.map((id) => {
      const { under18 = false, favoursSince } = book.shooters.get(id) ?? {};
      return { under18, favours: favoursSince !== undefined };
    }),
  );
}

export function hasMinor(book: Book, shooters: readonly ShooterId[]): boolean {
  return shooters.some((id) => book.shooters.get(id)?.under18 === true);
}

/** The wish without what is closed to the shooter today. A debt that is to be doubled keeps its stake. */
export function wishOnLine<Wish extends Pick<PressureWish, 'stake' | 'seen' | 'doubles'>>(
  line: Line,
  wish: Wish,
): Wish {
  const { stake, seen, doubles } = wish;
  const closed = line.highest !== 'forfeit' || !fitsPolicy(stake, line.policy);
  const tooHigh = stepsUp(line.highest, rungOf({ stake: null, seen })) > 0;
  return {
    ...wish,
    stake: closed && doubles === null ? '' : stake,
    seen: tooHigh ? 'nobody' : seen,
  };
}

/** Why a round is not started as it is set up. */
export type Refusal =
  /** The body has not been asked about. */
  | 'unasked'
  | 'money'
  /** Under 18, and nothing an adult allowed. */
  | 'age'
  /** Above what the brakes allow today. */
  | 'brake'
  /** A video of someone under 18 without a guardian's word. */
  | 'guardian'
  /** Double or nothing with a brake on. */
  | 'double today'
  /** Double or nothing with nothing to beat. */
  | 'double what'
  /** The debt is settled, or may grow no more. */
  | 'double no more';

/** The first reason not to start a round, or null. */
export function refusalOf(
  book: Book,
  shooter: ShooterId,
  line: Line,
  { seen, guardian }: Pick<PressureWish, 'seen' | 'guardian'>,
  setup: Pick<PressureSetup, 'stake' | 'mark' | 'game' | 'doubles'>,
): Refusal | null {
  const { stake, mark, doubles = null } = setup;
  if (line.body === null) return 'unasked';
  if (stake !== null && looksLikeMoney(stake)) return 'money';
  if (!fitsPolicy(stake, line.policy)) return 'age';
  if (stepsUp(line.highest, rungOf({ stake, seen })) > 0) return 'brake';
  if (line.young && seen === 'filmed' && !guardian) return 'guardian';
  if (doubles === null) return null;
  if (line.brakes.length > 0) return 'double today';
  if (!mark && !setup.game) return 'double what';
  const debt = debtsOf(book, shooter).find(({ round }) => round.id === doubles.round);
  return debt && mayDouble(line.policy) && doublesNext(debt)?.times === doubles.times
    ? null
    : 'double no more';
}

/** Nobody under 18 plays for double. */
export function mayDouble(policy: StakePolicy): boolean {
  return policy === 'open';
}
