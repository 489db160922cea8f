import type { Stop } from '../../court/cards.ts';
import type { GroupTurns } from '../../log/events.ts';
import type { GamePlan } from '../../pressure/gamePlan.ts';
import { inHundred } from '../../store/forecast.ts';
import type { GroupRefusal } from '../../store/groupLine.ts';
import type { Seat } from '../../store/groupPrices.ts';
import { goalWords } from '../gameWords.ts';
import { NOT_MONEY } from '../line/lineWords.ts';
import { listed } from '../parts/listed.ts';

/* What is said where several play together. */

export const TURN_WORDS: Readonly<Record<GroupTurns, string>> = {
  shot: 'After every shot',
  stop: 'After every spot',
  game: 'After a whole game',
};

/** What one of several has to do; in a duel, where they start. @param names of all, in the order of the seats */
export function seatGoal(seat: Seat, seats: readonly Seat[], card: readonly Stop[]): string {
  const { plan } = seat;
  if (plan.family !== 'duel') return goalWords(plan, card);
  const own = seat === seats[0] ? plan.headStart : 0 - plan.headStart;
  return own > 0 ? `Starts ${own} ahead` : own < 0 ? `Starts ${-own} behind` : 'Starts level';
}

/** `Ines starts 2 ahead: Ines wins about 52 times in 100, Tobi about 46.` Empty for anything but a duel. */
export function duelSentence(seats: readonly Seat[], nameOf: (shooter: string) => string): string {
  const [one, other] = seats;
  if (!one || !other || one.plan.family !== 'duel') return '';
  const { headStart } = one.plan;
  const [first, second] = [nameOf(one.shooter), nameOf(other.shooter)];
  const start =
    headStart === 0
      ? 'Both start level'
      : `${headStart > 0 ? first : second} starts ${Math.abs(headStart)} ahead`;
  return `${start}: ${first} wins about ${inHundred(one.chance)} times in 100, ${second} about ${inHundred(other.chance)}. What is left ends level.`;
}

/** How a duel's head start reads on the stepper: `Ines 2 ahead`. */
export function headStartWords(headStart: number, first: string, second: string): string {
  if (headStart === 0) return 'Level';
  return `${headStart > 0 ? first : second} ${Math.abs(headStart)} ahead`;
}

/** The head start of a plan; 0 for anything but a duel. */
export function headStartOf(plan: GamePlan | undefined): number {
  return plan?.family === 'duel' ? plan.headStart : 0;
}

/**
 * Why they cannot start, and what to do. Whose body has a brake on is not said in front of the others, except where they
 * had better not play.
 *
 * @param who the shooters it is about
 */
export function groupRefusalWords(refusal: GroupRefusal, who: readonly string[]): string {
  const names = listed(who);
  switch (refusal) {
    case 'unasked':
      return `${names} ${who.length === 1 ? 'is' : 'are'} still to be asked.`;
    case 'money':
      return NOT_MONEY;
    case 'age':
      return 'Nothing is on the line where someone under 18 plays, or where somebody has not said.';
    case 'brake':
      return 'Nothing on the line today: it would be a step up for somebody on a day that is no day for one.';
    case 'watched':
      return `No step up today for ${names}: playing in front of the others would be one. Keep the count together, or shoot a relaxed round.`;
  }
}
