import { useState } from 'react';

import { verdictOf } from '../../games/played.ts';
import type { Round } from '../../log/book.ts';
import { useDoors } from '../gymContext.ts';

/** Ends a round early; asked twice, and told what it costs. */
export function EndHere({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  // What the device broke off may be left without a loser.
  const brokenOff = round.pausedBy === 'interrupted';
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
        {brokenOff ? ' The device broke it off, so the mark and the stake are off.' : markWords(round)}
        {round.pair ? ' The pair can no longer be compared.' : ''}
      </p>
      <button
        type="button"
        className="button"
        onClick={() => void court.end(brokenOff ? 'interrupted' : 'stopped')}
      >
        Yes, end it
      </button>
      <button type="button" className="button" onClick={() => setAsked(false)}>
        No
      </button>
    </div>
  );
}

/** What ending now makes of the mark; the verdict itself is worked out from the ended round. */
function markWords(round: Round): string {
  switch (verdictOf({ ...round, state: 'ended', ending: 'stopped' })) {
    case 'beaten':
      return ' You have beaten the mark already, and that stands.';
    case 'short':
      return ' The mark is out of reach already, so it counts as missed.';
    case 'stopped':
      return ' The mark and the stake are off.';
    case 'open':
    case 'void':
    case null:
      return '';
  }
}
