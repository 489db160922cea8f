import { debtsOf, type Debt } from '../games/ledger.ts';
import type { Shooter } from '../log/book.ts';
import { mayDouble, stakesFor } from '../store/line.ts';
import { writeAddress } from '../store/places.ts';
import { useGym } from './gymContext.ts';
import { Page } from './parts/Page.tsx';
import { DebtList } from './stakes/DebtList.tsx';
import './styles/stakes.css';

/** The ledger: what the shooter owes, what is owed to them, and what is settled. */
export function StakesScreen({ shooter }: { readonly shooter: Shooter }) {
  const book = useGym((state) => state.book);
  const debts = debtsOf(book, shooter.id);
  const open = (owes: Debt['owes']) => debts.filter((debt) => !debt.settled && debt.owes === owes);
  const policy = stakesFor(book, [shooter.id]);
  const doubling = mayDouble(policy);
  const settled = debts.filter((debt) => debt.settled);
  return (
    <Page title="Stakes">
      {debts.length === 0 ? (
        <section className="panel">
          <p className="lead">Nothing is owed, and nothing is owed to you.</p>
          {policy === 'off' ? null : (
            <>
              <p>
                Put something small on the line in a pressured round, beat the mark or fall short, and it is
                kept here until it is settled.
              </p>
              <a className="button" href={writeAddress('pressured')}>
                Set a pressured round up
              </a>
            </>
          )}
        </section>
      ) : (
        <>
          <div className="columns">
            <DebtList
              title={`${shooter.name} owes`}
              none="Nothing. All square."
              debts={open('shooter')}
              doubling={doubling}
            />
            <DebtList
              title={`Owed to ${shooter.name}`}
              none="Nothing at the moment."
              debts={open('others')}
              doubling={doubling}
            />
          </div>
          {settled.length === 0 ? null : <DebtList title="Settled" none="" debts={settled} />}
        </>
      )}
      {policy === 'open' ? null : (
        <p className="notice">
          {shooter.name} is under 18:{' '}
          {policy === 'off'
            ? 'nothing new is put on the line.'
            : 'an adult allowed small favours from a short list, and nothing is doubled.'}
        </p>
      )}
      <p className="notice">
        Small, agreed by everyone, and done with a smile. Never money, never food, sleep, shame or pain, and
        no extra running for a tired or sore body. Local rules come first, those of a league or a school too.
        A debt is doubled at most twice. Shooting again is always free. A stake that spoils the fun is settled
        by crossing it out; if stakes keep you awake, or you play on to win something back, leave them off and
        talk to someone you trust.
      </p>
    </Page>
  );
}
