import { useStore } from 'zustand';

import type { Entry, Round } from '../../log/book.ts';
import { useDoors } from '../gymContext.ts';
import { EndHere } from './EndHere.tsx';
import { SomeoneGoes } from './SomeoneGoes.tsx';
import { useNames } from '../useNames.ts';
import type { Together } from './useTogether.ts';

/** Undo, pause, and the ways out. */
export function CourtFoot({ round, others }: Together) {
  const { court } = useDoors();
  const phase = useStore(court.store, (state) => state.phase);
  const last = lastOf([round, ...others]);
  return (
    <footer className="court-foot">
      <button
        type="button"
        className="button"
        disabled={last === null}
        onClick={() => void court.undo(round)}
      >
        Undo the last{last ? <LastWords {...last} /> : null}
      </button>
      {phase === 'live' || phase === 'countdown' ? (
        <button type="button" className="button" onClick={() => court.leave('asked')}>
          Pause
        </button>
      ) : null}
      {phase === 'ready' ? (
        <>
          <a className="button" href="#/bench">
            Leave, go on later
          </a>
          <SomeoneGoes round={round} others={others} />
          <EndHere round={round} others={others} />
        </>
      ) : null}
      <p className="court-keys quiet">
        {phase === 'buzzer' && round.entry === 'each-shot'
          ? 'Keys: → it went in, ← it missed, N nothing, '
          : null}
        {phase !== 'buzzer' && round.entry === 'each-shot'
          ? 'Keys: → make, ← miss, ↑ long, ↓ short, Shift ← left, Shift → right, '
          : null}
        {round.entry === 'counts' ? 'Keys: digits, Enter, ' : null}
        Backspace undo, P pause
      </p>
    </footer>
  );
}

interface Last {
  readonly round: Round;
  readonly entry: Entry;
}

/** The latest entry of a group. */
function lastOf(rounds: readonly Round[]): Last | null {
  return rounds.reduce<Last | null>((last, round) => {
    const entry = round.entries.at(-1);
    return entry && (last === null || entry.at > last.entry.at) ? { round, entry } : last;
  }, null);
}

/** What the undo would take back. */
function LastWords({ round, entry }: Last) {
  const nameOf = useNames();
  // Whoever had to go since can come back.
  if (round.ending === 'stopped') return <>: {nameOf(round.shooter)} has gone</>;
  return (
    <>
      : {round.group ? `${nameOf(round.shooter)}, ` : ''}
      {entryWords(entry)}
    </>
  );
}

function entryWords(entry: Entry): string {
  switch (entry.kind) {
    case 'shot':
      return entry.made ? 'make' : 'miss';
    case 'count':
      return `${entry.makes} of ${entry.attempts}`;
    case 'expired':
      return 'no shot';
  }
}
