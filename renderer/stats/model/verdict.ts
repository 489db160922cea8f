import { type Evidence as Have, needsOf } from '../reading.ts';
import type { ChokeIndex, NoIndex } from './chokeIndex.ts';
import { CLEAR_EVIDENCE, type Evidence } from './evidence.ts';

/**
 * What may be said. `none` = too early, or no index; `same` = within 3 points of none; `likely` and `clear` say how sure;
 * `unclear` = none of these.
 */
export type Verdict =
  | { readonly kind: 'none'; readonly needs: { readonly pressured: number; readonly sessions: number } }
  | { readonly kind: 'drop' | 'gain'; readonly sure: 'likely' | 'clear' }
  | { readonly kind: 'same' | 'unclear' };

/* Fixed before anyone shoots, so that nobody can look until the answer suits. */
export const LIKELY = 0.95;
export const CLEAR = 0.99;
export const SAME = 0.9;
const EVEN = 0.5;

/**
 * The verdict by fixed thresholds: a drop is likely from P > 0.95 and clear from P > 0.99, or from an e-process that ever
 * reached 20 while a drop is still likelier than none; about the same where P(|drop| < 3 points) > 0.9. A gain is read like
 * a drop, without the e-process, which bets on drops alone. Of shooters without any drop who look after each of 36 sessions
 * in twelve weeks one in seven sees P > 0.95 at some time, and one in fifty P > 0.99 (tests/bench/looking.ts); an e-process
 * of 20 is seen by one in twenty at most.
 *
 * @param evidence the sign-flip e-process of the coin-ordered pairs
 * @param have the shots it rests on
 */
export function verdictOf(index: ChokeIndex | NoIndex, evidence: Evidence, have: Have): Verdict {
  const needs = needsOf(have);
  if (index.kind === 'none' || needs.pressured > 0 || needs.sessions > 0) return { kind: 'none', needs };
  const { probability, probabilitySame } = index.overall;
  if (probabilitySame > SAME) return { kind: 'same' };
  // Bets once won stay won, but not against what all rounds say by now.
  const won = evidence.highest >= CLEAR_EVIDENCE && probability > EVEN;
  if (probability > CLEAR || won) return { kind: 'drop', sure: 'clear' };
  if (probability > LIKELY) return { kind: 'drop', sure: 'likely' };
  if (probability < 1 - CLEAR) return { kind: 'gain', sure: 'clear' };
  if (probability < 1 - LIKELY) return { kind: 'gain', sure: 'likely' };
  return { kind: 'unclear' };
}
