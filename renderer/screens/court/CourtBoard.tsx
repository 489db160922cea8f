import { useStore } from 'zustand';

import { present } from '../../basics/invariant.ts';
import { SHOT_WORDS, spotWords } from '../../court/spots.ts';
import type { Round } from '../../log/book.ts';
import { nextTurn, stopAt, turnsOf } from '../../log/roundCells.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { BuzzerPad } from './BuzzerPad.tsx';
import { EndHere } from './EndHere.tsx';
import { CountPad } from './CountPad.tsx';
import { GetReady } from './GetReady.tsx';
import { GoingOn } from './GoingOn.tsx';
import { SpotOnCourt } from './SpotOnCourt.tsx';
import { StopDots } from './StopDots.tsx';
import { TapHalves } from './TapHalves.tsx';

/** One round, fed by the log: where to shoot from, how it stands, and the two halves to tap. */
export function CourtBoard({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  const phase = useStore(court.store, (state) => state.phase);
  const shooter = useGym(({ book }) => book.shooters.get(round.shooter));
  const turn = nextTurn(round);
  const { used, all } = turnsOf(round);
  const index = turn?.stop ?? round.stops.length - 1;
  const stop = stopAt(round, index);
  return (
    <main className={`court ${round.condition}`}>
      <header className="court-head">
        <div className="court-where">
          <p className="court-kind">
            {round.condition === 'relaxed' ? 'Relaxed' : 'Pressured'} · {shooter?.name}
          </p>
          <h1>{spotWords(stop.spot)}</h1>
          <p className="lead">
            {SHOT_WORDS[stop.shot]}, shot {Math.min(used + 1, all)} of {all}
          </p>
          {round.entry === 'each-shot' ? <StopDots round={round} stop={index} /> : null}
        </div>
        <GoingOn round={round} />
        <SpotOnCourt rules={present(shooter, 'the shooter of the round').rules} round={round} stop={index} />
      </header>
      {phase === 'ready' || phase === 'countdown' ? (
        <GetReady round={round} spot={spotWords(stop.spot)} />
      ) : null}
      {phase === 'live' && round.entry === 'each-shot' ? <TapHalves round={round} /> : null}
      {phase === 'live' && round.entry === 'counts' ? <CountPad round={round} /> : null}
      {phase === 'buzzer' ? <BuzzerPad round={round} /> : null}
      <CourtFoot round={round} />
    </main>
  );
}

/** What the undo would take back. */
function lastWords(round: Round): string {
  const last = round.entries.at(-1);
  switch (last?.kind) {
    case 'shot':
      return last.made ? ': make' : ': miss';
    case 'count':
      return `: ${last.makes} of ${last.attempts}`;
    case 'expired':
      return ': no shot';
    case undefined:
      return '';
  }
}

function CourtFoot({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  const phase = useStore(court.store, (state) => state.phase);
  return (
    <footer className="court-foot">
      <button
        type="button"
        className="button"
        disabled={round.entries.length === 0}
        onClick={() => void court.undo(round)}
      >
        Undo the last{lastWords(round)}
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
          <EndHere round={round} />
        </>
      ) : null}
      <p className="court-keys quiet">
        {round.entry === 'each-shot'
          ? 'Keys: → make, ← miss, ↑ long, ↓ short, Shift ← left, Shift → right, '
          : 'Keys: digits, Enter, '}
        Backspace undo, P pause
      </p>
    </footer>
  );
}
