import { byText } from '../basics/order.ts';
import type { Round } from '../log/book.ts';
import { cellKey, cellsOf } from './drop.ts';
import type { PlaceWeight } from './model/reference.ts';

/** The mix of one shooter's relaxed shots: attempts by spot and kind of shot, in an order of their own. */
export function relaxedMix(rounds: Iterable<Round>): PlaceWeight[] {
  return [...cellsOf(rounds).values()]
    .filter(({ relaxed }) => relaxed.attempts > 0)
    .map(({ spot, shot, relaxed }) => ({ spot, shot, weight: relaxed.attempts }))
    .toSorted((a, b) => byText(cellKey(a.spot, a.shot), cellKey(b.spot, b.shot)));
}
