import { useMemo, useState } from 'react';

import type { Card } from '../court/cards.ts';
import { gameFault } from '../games/gameFault.ts';
import type { Shooter } from '../log/book.ts';
import { inHundred } from '../store/forecast.ts';
import { FIRST_DUEL } from '../store/groupWish.ts';
import { writeAddress } from '../store/places.ts';
import { cardsOf } from '../store/roundActions.ts';
import { averageRate, earlierRounds, readRival, soloDuel, writeRival } from '../store/soloDuels.ts';
import { dayWords } from './dayWords.ts';
import { useDoors, useGym } from './gymContext.ts';
import { Choice } from './parts/Choice.tsx';
import { Page } from './parts/Page.tsx';
import { Stepper } from './parts/Stepper.tsx';
import { RoundSetupScreen } from './RoundSetupScreen.tsx';
import './styles/together.css';

interface Props {
  readonly shooter: Shooter;
  /** Whom it is played against, as written in the address; null while that is chosen. */
  readonly about: string | null;
}

/** Chooses whom to play against shot for shot, and then sets the round up. */
export function DuelScreen({ shooter, about }: Props) {
  const book = useGym((state) => state.book);
  const game = useMemo(() => {
    const rival = about === null ? null : readRival(about);
    return rival && soloDuel(book, shooter.id, rival);
  }, [book, shooter.id, about]);
  if (game && gameFault(game.plan, game.stops) === null) {
    return <RoundSetupScreen shooter={shooter} condition="pressured" game={game} />;
  }
  return (
    <Page title="A duel">
      {about === null ? null : (
        <p className="notice" role="status">
          {game ? gameFault(game.plan, game.stops) : 'That round or card is not here any more.'}
        </p>
      )}
      <p className="lead">Shot for shot against somebody. A head start can make it fair.</p>
      <div className="columns packed">
        <DrawnOpponent shooter={shooter} />
        <EarlierSelf shooter={shooter} />
        <section className="panel" aria-labelledby="duel-here">
          <h2 id="duel-here">Somebody on this court</h2>
          <p>Two of you, one device. Both of you shoot on your own record.</p>
          <a className="button main" href={writeAddress('together', 'duel')}>
            Two on one device
          </a>
        </section>
      </div>
    </Page>
  );
}

/** Nobody real, who makes so many in ten. */
function DrawnOpponent({ shooter }: { readonly shooter: Shooter }) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const cards = cardsOf(book);
  const [card, setCard] = useState<Card>(FIRST_DUEL);
  const average = useMemo(
    () => averageRate(book, shooter.id, card.stops, gym.moment()),
    [gym, book, shooter.id, card],
  );
  const [chosen, setChosen] = useState<number | null>(null);
  const rate = chosen === null ? average : chosen / 10;
  return (
    <section className="panel" aria-labelledby="duel-drawn">
      <h2 id="duel-drawn">Nobody real</h2>
      <Choice
        question="On which card?"
        answers={cards.map(({ id, name }) => ({ value: id as string, words: name }))}
        value={card.id}
        onChoose={(id) => setCard((old) => cards.find((one) => one.id === id) ?? old)}
      />
      <Choice
        question="How good?"
        answers={[
          { value: 'average', words: 'As good as you on an average day' },
          { value: 'chosen', words: 'So many in ten' },
        ]}
        value={chosen === null ? 'average' : 'chosen'}
        onChoose={(answer) => setChosen(answer === 'average' ? null : nearestTen(average))}
      />
      {chosen === null ? (
        <p>
          Makes about {inHundred(average)} in 100 on this card, as your record says you do under pressure.
        </p>
      ) : (
        <Stepper
          label="Makes in ten"
          value={chosen}
          min={1}
          max={9}
          write={(value) => `${value} in 10`}
          onChange={setChosen}
        />
      )}
      <p className="quiet">Each of its shots is drawn by chance at that rate.</p>
      <a
        className="button main"
        href={writeAddress('duel', writeRival({ kind: 'rate', rate, card: card.id }))}
      >
        Set it up
      </a>
    </section>
  );
}

/** A round of one's own, as it went then. */
function EarlierSelf({ shooter }: { readonly shooter: Shooter }) {
  const book = useGym((state) => state.book);
  const rounds = useMemo(() => earlierRounds(book, shooter.id), [book, shooter.id]);
  return (
    <section className="panel" aria-labelledby="duel-earlier">
      <h2 id="duel-earlier">Your earlier self</h2>
      {rounds.length === 0 ? (
        <p>Rounds you tap shot by shot to the end of their card can be played against later.</p>
      ) : (
        <>
          <p>An earlier round goes along beside you, shot for shot as it went then.</p>
          <ul className="plain-list rivals">
            {rounds.map(({ round, makes, shots }) => (
              <li key={round.id}>
                <a
                  className="button"
                  href={writeAddress('duel', writeRival({ kind: 'round', round: round.id }))}
                >
                  <span>
                    {dayWords(round.date)}
                    <span className="quiet">
                      {' '}
                      {round.condition}, {round.game}
                    </span>
                  </span>
                  <strong>
                    {makes} of {shots}
                  </strong>
                </a>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function nearestTen(rate: number): number {
  return Math.min(9, Math.max(1, Math.round(rate * 10)));
}
