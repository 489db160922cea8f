import { useState } from 'react';

import { verdictOf } from '../../games/played.ts';
import type { Round } from '../../log/book.ts';
import { useDoors } from '../gymContext.ts';
import type { Together } from './useTogether.ts';

/** Ends a round early; asked twice, and told what it costs. */
export function EndHere({ round, others }: Together) {
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
        {brokenOff ? ' The device broke it off, so the mark and the stake are off.' : endWords(round, others)}
        {others.some(({ state }) => state !== 'ended') ? ' It ends for everyone.' : ''}
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

/** What ending now makes of the mark or the game; the verdict itself is worked out from the ended round. */
function endWords(round: Round, others: readonly Round[]): string {
  const game = round.pressure?.game;
  switch (verdictOf({ ...round, state: 'ended', ending: 'stopped' }, others)) {
    case 'beaten':
      return game
        ? ' You have won already, and that stands.'
        : ' You have beaten the mark already, and that stands.';
    case 'short':
      return game
        ? ' It cannot be won any more, so the game counts as lost.'
        : ' The mark is out of reach already, so it counts as missed.';
    case 'stopped':
      return game
        ? ' The shots count, the game does not, and the stake is off.'
        : ' The mark and the stake are off.';
    case 'level':
    case 'open':
    case 'void':
    case null:
      return '';
  }
}
