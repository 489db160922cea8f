import { useId } from 'react';

import type { Debt } from '../../games/ledger.ts';
import { roundTally } from '../../log/roundCells.ts';
import { useDoors } from '../gymContext.ts';

interface Props {
  readonly title: string;
  /** What is said of an empty list. */
  readonly none: string;
  readonly debts: readonly Debt[];
}

/** Stakes of one kind, each with the round that decided it. */
export function DebtList({ title, none, debts }: Props) {
  const id = useId();
  return (
    <section className="panel" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {debts.length === 0 ? <p className="quiet">{none}</p> : null}
      <ul className="debts">
        {debts.map((debt) => (
          <DebtRow key={debt.round.id} debt={debt} />
        ))}
      </ul>
    </section>
  );
}

function DebtRow({ debt: { round, stake, owes, settled } }: { readonly debt: Debt }) {
  const { gym } = useDoors();
  const { makes } = roundTally(round);
  const needed = round.pressure?.mark?.makes ?? 0;
  return (
    <li className="row debt">
      <div className="debt-words">
        <p className="lead">{stake}</p>
        <p className="quiet">
          {round.date}, {round.game}: {makes} {makes === 1 ? 'make' : 'makes'}, the mark was {needed}.{' '}
          {owes === 'others' ? 'Beaten.' : 'Short of it.'}
        </p>
      </div>
      <button
        type="button"
        className="button"
        onClick={() =>
          void gym.dispatch([{ type: settled ? 'StakeReopened' : 'StakeSettled', body: { round: round.id } }])
        }
      >
        {settled ? 'Open it again' : 'Settle it'}
        <span className="unseen">: {stake}</span>
      </button>
    </li>
  );
}
