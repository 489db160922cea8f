import { useState } from 'react';

import type { Round } from '../../log/book.ts';
import { nextTurn, stopAt } from '../../log/roundCells.ts';
import { useDoors } from '../gymContext.ts';
import { useSettled } from './useSettled.ts';

/** After the buzzer: a ball that had left the hand still counts. */
export function BuzzerPad({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  const settled = useSettled();
  if (round.entry === 'counts') return <CountAtBuzzer round={round} />;
  return (
    <section className="count-pad" role="alert">
      <h2>Time! Was a ball in the air?</h2>
      <p className="lead">A shot counts if it left the hand before the buzzer.</p>
      <div className="row">
        <button
          type="button"
          className="button main big"
          disabled={!settled}
          onClick={() => court.shot(true, null)}
        >
          Yes, and it went in
        </button>
        <button
          type="button"
          className="button big"
          disabled={!settled}
          onClick={() => court.shot(false, null)}
        >
          Yes, and it missed
        </button>
        <button
          type="button"
          className="button big"
          disabled={!settled}
          onClick={() => court.nothingInTheAir()}
        >
          No, nothing
        </button>
      </div>
    </section>
  );
}

/** With counts, the spot may be half shot out when the buzzer goes. */
function CountAtBuzzer({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  const [shots, setShots] = useState<number | null>(null);
  const settled = useSettled();
  const turn = nextTurn(round);
  const left = turn ? stopAt(round, turn.stop).attempts - turn.turn : 0;
  const numbers = (most: number, choose: (n: number) => void) => (
    <div className="counts">
      {Array.from({ length: most + 1 }, (_, n) => (
        <button key={n} type="button" className="button figure" disabled={!settled} onClick={() => choose(n)}>
          {n}
        </button>
      ))}
    </div>
  );
  return (
    <section className="count-pad" role="alert">
      {shots === null ? (
        <>
          <h2>Time! How many shots did you get off here?</h2>
          {numbers(left, (n) => (n === 0 ? court.nothingInTheAir() : setShots(n)))}
        </>
      ) : (
        <>
          <h2>How many of those {shots} went in?</h2>
          {numbers(shots, (makes) => court.count(makes, shots))}
        </>
      )}
    </section>
  );
}
