import { useState } from 'react';

import { attemptsOn, STANDARD_CARDS, type Card } from '../../court/cards.ts';
import { removeCard } from '../../store/cardActions.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { stopsWords } from './stopsWords.ts';

interface Props {
  /** Starts a new card, from the stops of another where one is given. */
  readonly onMake: (like: Card | null) => void;
  readonly onSaid: (words: string) => void;
}

/** Every card: those all shooters have, then their own. */
export function CardList({ onMake, onSaid }: Props) {
  const own = useGym(({ book }) => book.cards);
  return (
    <section className="panel" aria-labelledby="card-list">
      <h2 id="card-list">Cards</h2>
      <p>A card is a fixed list of stops. Shoot the same card relaxed and pressured, and the two compare.</p>
      <button type="button" className="button main" onClick={() => onMake(null)}>
        Make a card of your own
      </button>
      <ul className="card-list">
        {[...own.values()].map((card) => (
          <CardRow key={card.id} card={card} onMake={onMake} onSaid={onSaid} own />
        ))}
        {STANDARD_CARDS.map((card) => (
          <CardRow key={card.id} card={card} onMake={onMake} onSaid={onSaid} />
        ))}
      </ul>
    </section>
  );
}

function CardRow({
  card,
  onMake,
  onSaid,
  own = false,
}: Props & { readonly card: Card; readonly own?: boolean }) {
  const { gym } = useDoors();
  const [asked, setAsked] = useState(false);
  return (
    <li className={asked ? undefined : 'with-buttons'}>
      <div>
        <h3>{card.name}</h3>
        <p className="quiet">
          {attemptsOn(card.stops)} shots. {stopsWords(card.stops)}
        </p>
      </div>
      {asked ? (
        <div className="notice warn" role="alert">
          <p>{card.name} can no longer be chosen. Rounds shot on it stay in the book.</p>
          <div className="row">
            <button
              type="button"
              className="button"
              onClick={() =>
                void removeCard(gym, card.id).then((saved) => {
                  if (saved) onSaid(`${card.name} is gone.`);
                })
              }
            >
              Yes, remove it
            </button>
            <button type="button" className="button main" onClick={() => setAsked(false)}>
              Keep
            </button>
          </div>
        </div>
      ) : (
        <div className="row">
          <button type="button" className="button" onClick={() => onMake(card)}>
            Make one like it<span className="unseen">: {card.name}</span>
          </button>
          {own ? (
            <button type="button" className="button plain" onClick={() => setAsked(true)}>
              Remove<span className="unseen"> {card.name}</span>
            </button>
          ) : null}
        </div>
      )}
    </li>
  );
}
