import { useStore } from 'zustand';

import type { Round } from '../../log/book.ts';
import { writeClock } from '../../store/court.ts';
import { useDoors } from '../gymContext.ts';
import { useShownTime } from './useShownTime.ts';

/** Before the first shot, after a pause, and while five to one is counted. */
export function GetReady({ round, spot }: { readonly round: Round; readonly spot: string }) {
  const { court } = useDoors();
  const phase = useStore(court.store, (state) => state.phase);
  if (phase === 'countdown') return <Countdown />;
  const goingOn = round.entries.length > 0;
  return (
    <section className="get-ready">
      <h2>{goingOn ? 'On you go, when you are ready' : `Go to the ${spot.toLowerCase()}`}</h2>
      {round.pressure ? (
        <PressureWords round={round} />
      ) : (
        <p className="lead">Take your time. Nothing is on the line.</p>
      )}
      <SoundGone round={round} />
      <button type="button" className="button main big" autoFocus onClick={() => void court.go()}>
        {round.condition === 'relaxed' ? (goingOn ? 'Go on' : 'Start') : 'Start the countdown'}
      </button>
    </section>
  );
}

/** Says why a countdown does not start, or why the round stands still. */
function SoundGone({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  const sound = useStore(court.store, (state) => state.sound);
  if (round.condition === 'relaxed' || (sound !== 'interrupted' && round.pausedBy !== 'interrupted'))
    return null;
  return (
    <p className="notice warn" role="status">
      The device took the sound away, and the clock stopped with it: a call, another app, or the loudspeaker
      is gone.
      {sound === 'interrupted'
        ? ' Bring it back, then start the countdown again.'
        : ' It is back: go on when you are ready.'}
    </p>
  );
}

function PressureWords({ round }: { readonly round: Round }) {
  const { stake = null, mark = null, clock = null } = round.pressure ?? {};
  return (
    <ul className="lead plain-list">
      {stake === null ? null : <li>On the line: {stake}</li>}
      {mark ? <li>Make {mark.makes} to win</li> : null}
      {clock ? (
        <li>
          {clock.kind === 'round' && round.clockLeft !== null
            ? `${writeClock(round.clockLeft, clock.seconds)} left on the clock`
            : `${clock.seconds} seconds ${clock.kind === 'round' ? 'for the round' : 'for each shot'}`}
        </li>
      ) : null}
      <li>Five, four, three, two, one – then {clock ? 'the clock runs' : 'shoot'}.</li>
    </ul>
  );
}

function Countdown() {
  const { court } = useDoors();
  const liveAt = useStore(court.store, (state) => state.liveAt);
  const now = useShownTime();
  const left = liveAt === null ? 0 : Math.ceil(liveAt - now);
  return (
    <div className="get-ready" role="timer" aria-label={`Starts in ${left}`}>
      <p className="countdown-figure">{left > 0 ? Math.min(left, 5) : 'Go'}</p>
    </div>
  );
}
