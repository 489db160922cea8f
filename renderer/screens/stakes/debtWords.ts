import type { Debt } from '../../games/ledger.ts';
import { roundTally } from '../../log/roundCells.ts';
import { timesWords } from '../line/lineWords.ts';

/** How a debt came about: `2026-11-25, Threes: 11 makes, the mark was 12. Short of it.` */
export function decidedWords({ round, owes, doublings }: Debt): string {
  const { makes } = roundTally(round);
  const mark = round.pressure?.mark;
  const played = `${round.date}, ${round.game}: ${makes} ${makes === 1 ? 'make' : 'makes'}`;
  const goal = mark ? `, the mark was ${mark.makes}` : '';
  return `${played}${goal}. ${outcomeWords(owes, doublings > 0, mark !== null)}`;
}

function outcomeWords(owes: Debt['owes'], doubled: boolean, mark: boolean): string {
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
