import { faceOf } from '../../games/face.ts';
import type { Debt } from '../../games/ledger.ts';
import type { Round } from '../../log/book.ts';
import { roundTally } from '../../log/roundCells.ts';
import type { Mark } from '../../pressure/ingredients.ts';
import { outcomeWords } from '../gameWords.ts';
import { timesWords } from '../line/lineWords.ts';

/**
 * How a debt came about: `2026-11-25, Threes: 11 makes, the mark was 12. Short of it.`; of a game, how far it had come.
 *
 * @param others the other rounds of its group
 */
export function decidedWords({ round, owes, doublings }: Debt, others: readonly Round[] = []): string {
  const mark = round.pressure?.mark ?? null;
  const face = faceOf(round, others);
  const came = face ? outcomeWords(face) : makesWords(round, mark);
  return `${round.date}, ${round.game}: ${came}. ${verdictWords(owes, doublings > 0, mark !== null)}`;
}

function makesWords(round: Round, mark: Mark | null): string {
  const { makes } = roundTally(round);
  return `${makes} ${makes === 1 ? 'make' : 'makes'}${mark ? `, the mark was ${mark.makes}` : ''}`;
}

function verdictWords(owes: Debt['owes'], doubled: boolean, mark: boolean): string {
  if (owes === 'nobody') return 'Double or nothing: nothing is owed any more.';
  const won = mark ? 'Beaten.' : 'Won.';
  const lost = mark ? 'Short of it.' : 'Not won.';
  const words = owes === 'others' ? won : lost;
  return doubled ? `${words} Double or nothing: doubled.` : words;
}

/** `Loser buys lunch`, `Loser buys lunch, 2 times` */
export function owedWords({ stake, times, owes }: Pick<Debt, 'stake' | 'times' | 'owes'>): string {
  const grown = owes === 'nobody' ? '' : timesWords(times);
  return grown === '' ? stake : `${stake}, ${grown}`;
}
