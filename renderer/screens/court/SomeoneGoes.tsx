import { useState } from 'react';

import { useDoors } from '../gymContext.ts';
import { useNames } from '../useNames.ts';
import type { Together } from './useTogether.ts';

/** Of several shooters one has to go: their round ends, the others play on. */
export function SomeoneGoes({ round, others }: Together) {
  const { court } = useDoors();
  const nameOf = useNames();
  const [asked, setAsked] = useState(false);
  const playing = [round, ...others]
    .filter(({ state }) => state !== 'ended')
    .toSorted((a, b) => (a.group?.place ?? 0) - (b.group?.place ?? 0));
  // The last one ends the game, and so does either of a duel: there is another way to say that.
  if (playing.length < 2 || round.pressure?.game?.plan.family === 'duel') return null;
  if (!asked) {
    return (
      <button type="button" className="button" onClick={() => setAsked(true)}>
        Somebody has to go
      </button>
    );
  }
  return (
    <div className="row" role="alert">
      <p>Who? Their shots stay on their record, their game does not count. The others play on.</p>
      {playing.map((one) => (
        <button
          key={one.id}
          type="button"
          className="button"
          onClick={() => {
            setAsked(false);
            void court.sendOff(one);
          }}
        >
          {nameOf(one.shooter)}
        </button>
      ))}
      <button type="button" className="button" onClick={() => setAsked(false)}>
        Nobody
      </button>
    </div>
  );
}
