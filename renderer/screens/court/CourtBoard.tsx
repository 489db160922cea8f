import { useStore } from 'zustand';

import { present } from '../../basics/invariant.ts';
import { SHOT_WORDS, spotWords } from '../../court/spots.ts';
import { faceOf } from '../../games/face.ts';
import { nextStop } from '../../games/gameOn.ts';
import type { Round } from '../../log/book.ts';
import { stopAt, turnsOf } from '../../log/roundCells.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { BuzzerPad } from './BuzzerPad.tsx';
import { CountPad } from './CountPad.tsx';
import { CourtFoot } from './CourtFoot.tsx';
import { CourtStrip } from './CourtStrip.tsx';
import { faceView } from './faceView.ts';
import { GetReady } from './GetReady.tsx';
import { GoingOn } from './GoingOn.tsx';
import { SpotOnCourt } from './SpotOnCourt.tsx';
import { StopDots } from './StopDots.tsx';
import { TapHalves } from './TapHalves.tsx';
import { useTogether, type Together } from './useTogether.ts';

/** One round, fed by the log and the rule of its game: where to shoot from, how it stands, and the two halves to tap. */
export function CourtBoard({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  const phase = useStore(court.store, (state) => state.phase);
  const shooter = useGym(({ book }) => book.shooters.get(round.shooter));
  const { others } = useTogether(round);
  const index = nextStop(round, others) ?? round.entries.at(-1)?.stop ?? 0;
  const stop = stopAt(round, index);
  const spot = spotWords(stop.spot);
  return (
    <main className={`court ${round.condition}`}>
      <header className="court-head">
        <div className="court-where">
          <p className="court-kind">
            {round.condition === 'relaxed' ? 'Relaxed' : 'Pressured'} · {shooter?.name}
            {round.pressure?.game ? ` · ${round.game}` : ''}
          </p>
          <h1>{spot}</h1>
          <p className="lead">
            {SHOT_WORDS[stop.shot]}, {shotWords({ round, others })}
          </p>
          {round.entry === 'each-shot' && !isDuel(round) ? (
            <StopDots round={round} others={others} stop={index} />
          ) : null}
        </div>
        <GoingOn round={round} />
        <SpotOnCourt rules={present(shooter, 'the shooter of the round').rules} round={round} stop={index} />
      </header>
      <CourtStrip round={round} others={others} />
      {phase === 'ready' || phase === 'countdown' ? (
        <GetReady key={round.id} round={round} others={others} spot={spot} />
      ) : null}
      {phase === 'live' && round.entry === 'each-shot' ? <TapHalves round={round} /> : null}
      {phase === 'live' && round.entry === 'counts' ? <CountPad round={round} /> : null}
      {phase === 'buzzer' ? <BuzzerPad round={round} /> : null}
      <CourtFoot round={round} others={others} />
    </main>
  );
}

/** Both sides of a duel have their dots in the strip. */
function isDuel({ pressure }: Round): boolean {
  return pressure?.game?.plan.family === 'duel';
}

function shotWords({ round, others }: Together): string {
  const face = faceOf(round, others);
  if (face) return faceView(face).shot;
  const { used, all } = turnsOf(round);
  return `shot ${Math.min(used + 1, all)} of ${all}`;
}
