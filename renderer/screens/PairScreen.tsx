import { useState } from 'react';

import { conditionInPair } from '../log/begin.ts';
import type { Pair, Shooter } from '../log/book.ts';
import { writeAddress } from '../store/places.ts';
import { nextOfPair, roundsOfPair, startPairRound, unfinishedPair } from '../store/roundActions.ts';
import { todayAt } from '../store/today.ts';
import { useDoors, useGym } from './gymContext.ts';
import { Page } from './parts/Page.tsx';
import { NERVES_BEFORE, Rating } from './parts/Rating.tsx';
import { RoundOutlook } from './parts/RoundOutlook.tsx';
import { RoundSetupScreen } from './RoundSetupScreen.tsx';

/** A pair: set up, toss, then one round after the other. */
export function PairScreen({ shooter, about }: { readonly shooter: Shooter; readonly about: string | null }) {
  const pair = useGym(({ book }) => (about === null ? undefined : book.pairs.get(about)));
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  if (pair) return <PairAhead pair={pair} />;
  // A coin that was tossed stands for the day: tossing again until it suits would spoil the comparison.
  const tossed = unfinishedPair(book, shooter.id, todayAt(gym));
  return tossed ? <PairAhead pair={tossed.pair} /> : <RoundSetupScreen shooter={shooter} condition="pair" />;
}

function PairAhead({ pair }: { readonly pair: Pair }) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const [nerves, setNerves] = useState<number | null>(null);
  if (book.open?.pair?.id === pair.id) {
    return (
      <Page title="This pair is being played">
        <p className="lead">Round {book.open.pair.place} of 2 is not finished yet.</p>
        <a className="button main" href={writeAddress('court')}>
          Go on where you were
        </a>
      </Page>
    );
  }
  const next = nextOfPair(book, pair.id);
  if (next === null) {
    const both = roundsOfPair(book, pair.id).length === 2;
    return (
      <Page title={both ? 'The pair is played' : 'This pair was broken off'}>
        <p className="lead">
          {both ? 'Both rounds are in the book.' : 'Its shots are kept. Toss again for another pair.'}
        </p>
        <a className="button main" href={writeAddress('result')}>
          See the result
        </a>
      </Page>
    );
  }
  const place = next;
  const condition = conditionInPair(pair.order, place);
  return (
    <Page title={place === 1 ? `The coin says: ${condition} first` : `Second round: ${condition}`}>
      <p className="lead">
        {pair.card.name}.{' '}
        {condition === 'pressured'
          ? `Now it counts${pair.pressure.stake === null ? '' : `: ${pair.pressure.stake}`}.`
          : 'Nothing is on the line. Shoot as you do on your own.'}
      </p>
      <section className="panel">
        <Rating {...NERVES_BEFORE} value={nerves} onRate={setNerves} />
      </section>
      <p className="quiet">
        There is no second toss. Play both rounds out, or the comparison is lost. Same ball, same rest before
        each.
      </p>
      <RoundOutlook shooter={pair.shooter} condition={condition} stops={pair.card.stops} />
      <details className="quiet">
        <summary>How the coin was tossed</summary>
        <p>
          The order follows from the number {pair.seed}, drawn before the first shot and kept with the pair,
          so that anyone can check it.
        </p>
      </details>
      <button
        type="button"
        className="button main slab"
        disabled={nerves === null || book.open !== null}
        onClick={() =>
          void startPairRound(gym, pair, place, nerves).then((round) => {
            if (round) window.location.hash = writeAddress('court');
          })
        }
      >
        <span className="slab-name">To the court</span>
        <span className="slab-words">
          {nerves === null ? 'Tap how nervous you are first' : `Round ${place} of 2, ${condition}`}
        </span>
      </button>
    </Page>
  );
}
