import { useState } from 'react';

import type { Round } from '../../log/book.ts';
import { useDoors } from '../gymContext.ts';

/** Ends a round early; asked twice, and told what it costs. */
export function EndHere({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  const [asked, setAsked] = useState(false);
  if (!asked) {
    return (
      <button type="button" className="button" onClick={() => setAsked(true)}>
        End it here
      </button>
    );
  }
  return (
    <div className="row" role="alert">
      <p>
        Its shots stay on your record.
        {round.pressure?.mark ? ' The mark and the stake are off.' : ''}
        {round.pair ? ' The pair can no longer be compared.' : ''}
      </p>
      <button type="button" className="button" onClick={() => void court.end('stopped')}>
        Yes, end it
      </button>
      <button type="button" className="button" onClick={() => setAsked(false)}>
        No
      </button>
    </div>
  );
}
