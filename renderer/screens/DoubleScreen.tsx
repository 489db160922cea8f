import { debtsOf, doublesNext } from '../games/ledger.ts';
import type { Shooter } from '../log/book.ts';
import { MOST_DOUBLES } from '../pressure/stakes.ts';
import { mayDouble, stakesFor } from '../store/line.ts';
import { writeAddress } from '../store/places.ts';
import { useGym } from './gymContext.ts';
import { Page } from './parts/Page.tsx';
import { RoundSetupScreen } from './RoundSetupScreen.tsx';

/** Sets up a round for double or nothing on one debt, given by the round that decided it. */
export function DoubleScreen({
  shooter,
  about,
}: {
  readonly shooter: Shooter;
  readonly about: string | null;
}) {
  const book = useGym((state) => state.book);
  const debt = debtsOf(book, shooter.id).find(({ round }) => round.id === about);
  if (debt && doublesNext(debt) && mayDouble(stakesFor(book, [shooter.id]))) {
    return <RoundSetupScreen shooter={shooter} condition="pressured" doubling={debt} />;
  }
  return (
    <Page title="Nothing to double">
      <p className="lead">
        This debt is settled, wiped out, or was doubled {MOST_DOUBLES} times already. Then it is time to
        settle it.
      </p>
      <a className="button main" href={writeAddress('stakes')}>
        To the stakes
      </a>
    </Page>
  );
}
