import { useEffect, useState } from 'react';

import type { Round } from '../../log/book.ts';
import { nextTurn, stopAt } from '../../log/roundCells.ts';
import { useDoors } from '../gymContext.ts';
import { useOneAtATime } from './useOneAtATime.ts';

/** How many of a spot's shots went in, in one tap; or typed, and Enter. */
export function CountPad({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  const once = useOneAtATime();
  const [typed, setTyped] = useState('');
  const turn = nextTurn(round);
  const left = turn ? stopAt(round, turn.stop).attempts - turn.turn : 0;
  const typedCount = typed === '' ? null : Number(typed);
  const tooMany = typedCount !== null && typedCount > left;

  useEffect(() => {
    const pressed = (key: KeyboardEvent) => {
      if (/^\d$/.test(key.key)) setTyped((old) => `${old}${key.key}`.slice(-3));
      else if (key.key === 'Escape') setTyped('');
      else if (key.key === 'Enter' && typedCount !== null) {
        // Enter on a focused number would count it a second time.
        key.preventDefault();
        if (!tooMany) court.count(typedCount);
        if (!tooMany) setTyped('');
      }
    };
    window.addEventListener('keydown', pressed);
    return () => window.removeEventListener('keydown', pressed);
  }, [court, typedCount, tooMany]);

  if (!turn) return null;
  return (
    <section className="count-pad" aria-label={`How many of ${left} went in?`}>
      <h2>How many of {left} went in?</h2>
      <div className="counts">
        {Array.from({ length: left + 1 }, (_, makes) => (
          <button
            key={makes}
            type="button"
            className="button figure"
            onClick={(click) => once(click.timeStamp, () => court.count(makes))}
          >
            {makes}
          </button>
        ))}
      </div>
      <p className="quiet" role="status">
        {typed === '' ? 'Tap the number, or type it and press Enter.' : null}
        {typed !== '' && !tooMany ? `${typed} of ${left}: press Enter` : null}
        {tooMany ? `${typed} is more than the ${left} shots here. Press Escape and type again.` : null}
      </p>
    </section>
  );
}
