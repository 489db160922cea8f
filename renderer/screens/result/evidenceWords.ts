import { CLEAR_EVIDENCE } from '../../store/fixedNumbers.ts';
import type { Study } from '../../store/study.ts';
import { oddsWords } from '../numberWords.ts';

/** What the evidence of the pairs says, which may be looked at every day. */
export function evidenceWords({ e, highest }: Study['pairEvidence']): string {
  const rule = `from ${CLEAR_EVIDENCE} to 1 on a drop is called clear, however often you look`;
  if (e >= CLEAR_EVIDENCE) return `Their evidence stands at odds of ${oddsWords(e)} against luck; ${rule}.`;
  if (highest >= CLEAR_EVIDENCE) {
    return `Their evidence against luck stands at ${oddsWords(e)}, and it once stood at ${oddsWords(highest)}; ${rule}, and what was clear once stays so.`;
  }
  if (e < 1) return `Their evidence speaks for luck so far, not for a drop; ${rule}.`;
  return `Their evidence stands at odds of ${oddsWords(e)} against luck; ${rule}.`;
}
