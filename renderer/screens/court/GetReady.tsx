import { useState, type MouseEvent } from 'react';
import { useStore } from 'zustand';

import { CATCH_AND_SHOOT } from '../../court/ruleSets.ts';
import { clockFor } from '../../games/clocks.ts';
import { faceOf } from '../../games/face.ts';
import type { Round } from '../../log/book.ts';
import { writeClock } from '../../store/court.ts';
import { goalWords } from '../gameWords.ts';
import { onTheLineWords } from '../line/lineWords.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { useNames } from '../useNames.ts';
import { useShownTime } from './useShownTime.ts';
import type { Together } from './useTogether.ts';

/** Fingers bounce: no two touches that are meant come this close. */
const BOUNCE_MS = 300;

/** Before the first shot, after a pause, and while five to one is counted. */
export function GetReady({ round, others, spot }: Together & { readonly spot: string }) {
  const { court } = useDoors();
  const phase = useStore(court.store, (state) => state.phase);
  const nameOf = useNames();
  const [shownAt] = useState(() => performance.now());
  if (phase === 'countdown') return <Countdown />;
  const goingOn = round.entries.length > 0;
  const name = round.group ? `${nameOf(round.shooter)}: ` : '';
  const go = (press: MouseEvent) => {
    // Where this comes right after a shot, a second tap meant for that one must not start the next. A key does not bounce.
    const bounced = press.detail > 0 && followsShot(round) && press.timeStamp - shownAt < BOUNCE_MS;
    if (!bounced) void court.go();
  };
  return (
    <section className="get-ready">
      <h2>{name + (goingOn ? 'On you go, when you are ready' : `Go to the ${spot.toLowerCase()}`)}</h2>
      {round.pressure ? (
        <PressureWords round={round} others={others} />
      ) : (
        <p className="lead">Take your time. Nothing is on the line.</p>
      )}
      <SoundGone round={round} />
      <button type="button" className="button main big" autoFocus onClick={go}>
        {round.condition === 'relaxed' ? (goingOn ? 'Go on' : 'Start') : 'Start the countdown'}
      </button>
    </section>
  );
}

function followsShot({ pressure, group }: Round): boolean {
  return pressure?.game?.plan.family === 'last shot' || group?.turns === 'game';
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

function PressureWords({ round, others }: Together) {
  const { stake = null, mark = null, game = null, doubles = null } = round.pressure ?? {};
  const clock = clockFor(round);
  const face = faceOf(round, others);
  return (
    <ul className="lead plain-list">
      {stake === null ? null : <li>{onTheLineWords(stake, doubles)}</li>}
      {mark ? <li>Make {mark.makes} to win</li> : null}
      {game ? <li>{goalWords(game.plan, round.stops)}</li> : null}
      {face?.game.family === 'last shot' ? <LastShotWords round={round} start={face.game.start} /> : null}
      {clock && face?.game.family !== 'last shot' ? (
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

/** The clock the next last shot begins with, and what the rules allow in that time. */
function LastShotWords({ round, start }: { readonly round: Round; readonly start: number | null }) {
  const rules = useGym(({ book }) => book.shooters.get(round.shooter)?.rules);
  if (start === null) return null;
  const tapOnly = rules !== undefined && start < CATCH_AND_SHOOT[rules];
  return (
    <li>
      {writeClock(start)} s on the clock this time
      {tapOnly ? `: under ${rules} rules too short to catch and shoot, only a tap counts` : ''}
    </li>
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
