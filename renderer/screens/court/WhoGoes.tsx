import { useEffect, useRef } from 'react';

import type { Round } from '../../log/book.ts';
import { useDoors } from '../gymContext.ts';
import { useNames } from '../useNames.ts';
import type { Together } from './useTogether.ts';

interface Props extends Together {
  readonly onDone: () => void;
}

/** Of several shooters one has to go: their round ends, the others play on. */
export function WhoGoes({ round, others, onDone }: Props) {
  const { court } = useDoors();
  const nameOf = useNames();
  const here = useRef<HTMLDivElement>(null);
  // On a phone it stands below the edge.
  useEffect(() => {
    // What it returns is nothing to clean up with.
    here.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  return (
    <div className="row" role="alert" ref={here}>
      <p>Who has to go? Their shots stay, their game does not count. The others play on.</p>
      {stillPlaying(round, others).map((one) => (
        <button
          key={one.id}
          type="button"
          className="button"
          onClick={() => {
            onDone();
            void court.sendOff(one);
          }}
        >
          {nameOf(one.shooter)}
        </button>
      ))}
      <button type="button" className="button" onClick={onDone}>
        Nobody
      </button>
    </div>
  );
}

/** The last one ends the game, and so does either of a duel: there is another way to say that. */
export function canGo(round: Round, others: readonly Round[]): boolean {
  return round.pressure?.game?.plan.family !== 'duel' && stillPlaying(round, others).length > 1;
}

function stillPlaying(round: Round, others: readonly Round[]): Round[] {
  return [round, ...others]
    .filter(({ state }) => state !== 'ended')
    .toSorted((a, b) => (a.group?.place ?? 0) - (b.group?.place ?? 0));
}
