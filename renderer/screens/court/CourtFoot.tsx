import { useState } from 'react';
import { useStore } from 'zustand';

import { stoppedLast } from '../../games/play.ts';
import type { Entry, Round } from '../../log/book.ts';
import { useDoors } from '../gymContext.ts';
import { EndHere } from './EndHere.tsx';
import { useNames } from '../useNames.ts';
import { canGo, WhoGoes } from './WhoGoes.tsx';
import type { Together } from './useTogether.ts';

/** Undo, pause, and the ways out. */
export function CourtFoot({ round, others }: Together) {
  const { court } = useDoors();
  const phase = useStore(court.store, (state) => state.phase);
  return (
    <footer className="court-foot">
      {phase === 'ready' ? <WaysOut round={round} others={others} /> : <Undo round={round} others={others} />}
      {phase === 'live' || phase === 'countdown' ? (
        <button type="button" className="button" onClick={() => court.leave('asked')}>
          Pause
        </button>
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

/** While nothing runs: leave for a while, for good, or let one of several go. */
function WaysOut({ round, others }: Together) {
  const [asksWho, setAsksWho] = useState(false);
  if (asksWho) return <WhoGoes round={round} others={others} onDone={() => setAsksWho(false)} />;
  return (
    <>
      <Undo round={round} others={others} />
      <a className="button" href="#/bench">
        Leave, go on later
      </a>
      {canGo(round, others) ? (
        <button type="button" className="button" onClick={() => setAsksWho(true)}>
          Somebody has to go
        </button>
      ) : null}
      <EndHere round={round} others={others} />
    </>
  );
}

function Undo({ round, others }: Together) {
  const { court } = useDoors();
  const nameOf = useNames();
  const last = lastOf([round, ...others]);
  const [gone] = stoppedLast([round, ...others]);
  return (
    <button
      type="button"
      className="button"
      disabled={last === null && gone === undefined}
      onClick={() => void court.undo(round)}
    >
      Undo the last{gone ? `: ${nameOf(gone.shooter)} has gone` : last ? <LastWords {...last} /> : null}
    </button>
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
