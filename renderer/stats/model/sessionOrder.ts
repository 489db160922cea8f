import { byText } from '../../basics/order.ts';
import type { Round } from '../../log/book.ts';
import { roundTally } from '../../log/roundCells.ts';

/** A round, and the shots of its session before it. */
export interface PlacedRound {
  readonly round: Round;
  /** Place of its first shot in the session, from 0. */
  readonly first: number;
  readonly attempts: number;
}

/**
 * Puts the rounds of one session in order and finds each one's place: where `first` is noted it is taken at its word,
 * else a round follows the one before. In the order of their start; rounds of a file all start at one moment and go by
 * number, or by name. Nothing depends on the order they are given in.
 */
export function placeRounds(rounds: readonly Round[]): PlacedRound[] {
  let next = 0;
  return rounds.toSorted(byStart).map((round) => {
    const first = round.first ?? next;
    const { attempts } = roundTally(round);
    next = first + attempts;
    return { round, first, attempts };
  });
}

function byStart(a: Round, b: Round): number {
  return (
    a.startedAt - b.startedAt ||
    byLabel(a.label, b.label) ||
    byText(shotsKey(a), shotsKey(b)) ||
    byText(a.id, b.id)
  );
}

/** Numbers as numbers, before names. */
function byLabel(a: string, b: string): number {
  const [left, right] = [numberOf(a), numberOf(b)];
  if (left !== right && !(Number.isNaN(left) && Number.isNaN(right))) {
    if (Number.isNaN(left)) return 1;
    return Number.isNaN(right) ? -1 : left - right;
  }
  return byText(a, b);
}

function numberOf(label: string): number {
  return label.trim() === '' ? NaN : Number(label);
}

/** Two rounds of one name: told apart by what was shot, so that ids, which differ from import to import, come last. */
function shotsKey(round: Round): string {
  const { condition, first, stops, entries } = round;
  return JSON.stringify([
    condition,
    first,
    stops,
    entries.map((entry) => (entry.kind === 'count' ? [entry.stop, entry.makes, entry.attempts] : entry.kind)),
  ]);
}
