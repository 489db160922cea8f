import { useId } from 'react';

import { othersIn } from '../../games/gameOn.ts';
import { doublesNext, type Debt } from '../../games/ledger.ts';
import { writeAddress } from '../../store/places.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { decidedWords, owedWords } from './debtWords.ts';

interface Props {
  readonly title: string;
  /** What is said of an empty list. */
  readonly none: string;
  readonly debts: readonly Debt[];
  /** Whether an open debt may be shot for, double or nothing. */
  readonly doubling?: boolean;
}

/** Stakes of one kind, each with the round that decided it. */
export function DebtList({ title, none, debts, doubling = false }: Props) {
  const id = useId();
  return (
    <section className="panel" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {debts.length === 0 ? <p className="quiet">{none}</p> : null}
      <ul className="debts">
        {debts.map((debt) => (
          <DebtRow key={debt.round.id} debt={debt} doubling={doubling} />
        ))}
      </ul>
    </section>
  );
}

function DebtRow({ debt, doubling }: { readonly debt: Debt; readonly doubling: boolean }) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const busy = book.open !== null;
  const { round, stake, owes, settled } = debt;
  return (
    <li className="row debt">
      <div className="debt-words">
        <p className="lead">{owedWords(debt)}</p>
        <p className="quiet">{decidedWords(debt, othersIn(book, round))}</p>
        {doubling && doublesNext(debt) === null ? (
          <p>Doubled twice: it grows no further. Now it is settled.</p>
        ) : null}
      </div>
      <div className="row">
        {owes === 'nobody' ? null : (
          <button
            type="button"
            className="button"
            onClick={() =>
              void gym.dispatch([
                { type: settled ? 'StakeReopened' : 'StakeSettled', body: { round: round.id } },
              ])
            }
          >
            {settled ? 'Open it again' : 'Settle it'}
            <span className="unseen">: {stake}</span>
          </button>
        )}
        {doubling && doublesNext(debt) && !busy ? (
          <a className="button" href={writeAddress('double', round.id)}>
            Double or nothing<span className="unseen">: {stake}</span>
          </a>
        ) : null}
      </div>
    </li>
  );
}
