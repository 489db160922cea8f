import { useState } from 'react';

import type { Shooter } from '../log/book.ts';
import { shooterFigures } from '../store/figures.ts';
import { useGym } from './gymContext.ts';
import { NoRounds } from './parts/NoRounds.tsx';
import { Page } from './parts/Page.tsx';
import { RoundList } from './parts/RoundList.tsx';

/** Rounds shown at once, and added at a touch: a season of hundreds would make the tablet stutter. */
const AT_ONCE = 60;

/** Every round, newest first. */
export function RoundsScreen({ shooter }: { readonly shooter: Shooter }) {
  const book = useGym((state) => state.book);
  const figures = shooterFigures(book, shooter.id);
  const [shown, setShown] = useState(AT_ONCE);
  const { rounds, unfelt } = figures;
  const left = rounds.length - shown;
  return (
    <Page title={`${shooter.name}: all rounds`}>
      {rounds.length === 0 ? (
        <NoRounds />
      ) : (
        <>
          <p className="lead">
            {rounds.length === 1 ? 'One round' : `${rounds.length} rounds`}, newest first.
          </p>
          <section className="panel">
            <RoundList rounds={rounds.slice(0, shown)} unfelt={unfelt} book={book} />
            {left > 0 ? (
              <button type="button" className="button" onClick={() => setShown(shown + AT_ONCE)}>
                Show {Math.min(left, AT_ONCE)} more
              </button>
            ) : null}
          </section>
        </>
      )}
    </Page>
  );
}
