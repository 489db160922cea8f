import { useEffect } from 'react';
import { useStore } from 'zustand';

import { writeAddress } from '../store/places.ts';
import { roundById } from '../store/roundActions.ts';
import { CourtBoard } from './court/CourtBoard.tsx';
import { useCourtKeys } from './court/useCourtKeys.ts';
import { useLeaveCourt } from './court/useLeaveCourt.ts';
import { useDoors, useGym } from './gymContext.ts';
import { Page } from './parts/Page.tsx';

/** The court: the round being played. When it is over, the verdict takes its place. */
export function CourtScreen() {
  const { court } = useDoors();
  const open = useGym((state) => state.ahead.open);
  const id = useStore(court.store, (state) => state.round);

  useEffect(() => court.enter(), [court, open?.id]);
  useLeaveCourt();
  useCourtKeys();

  const over = useGym(({ book }) => {
    const round = roundById(book, id);
    return round !== null && round.state === 'ended';
  });
  // Where a new round has been started, the one before it is no longer on court.
  const toVerdict = over && !open;
  useEffect(() => {
    if (toVerdict && id !== null) window.location.replace(writeAddress('after', id));
  }, [toVerdict, id]);

  if (!open) {
    return over ? null : (
      <Page title="No round is being played">
        <p>Start one from the bench.</p>
      </Page>
    );
  }
  return <CourtBoard round={open} />;
}
