import { useState } from 'react';

import { attemptsOn, MOST_STOPS, type Card, type Stop } from '../../court/cards.ts';
import type { Shooter } from '../../log/book.ts';
import { cardNameFault, LONGEST_NAME, makeCard, stopsFault } from '../../store/cardActions.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { StopForm } from './StopForm.tsx';
import { StopList } from './StopList.tsx';

interface Props {
  readonly shooter: Shooter;
  readonly like: Card | null;
  /** Called with a sentence to show where a card was kept, with null where it was not. */
  readonly onDone: (words: string | null) => void;
}

/** Makes a card: stops are added on the left, and the card grows on the right. */
export function CardForm({ shooter, like, onDone }: Props) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const [name, setName] = useState('');
  const [stops, setStops] = useState<readonly Stop[]>(like?.stops ?? []);
  const [fault, setFault] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const full = stops.length >= MOST_STOPS;

  const save = async () => {
    const wrong = stopsFault(stops) ?? cardNameFault(book, name);
    setFault(wrong);
    if (wrong !== null) return;
    setBusy(true);
    const saved = await makeCard(gym, name, stops);
    setBusy(false);
    if (saved) onDone(`${name.trim()} is kept. Choose it when you set a round up.`);
  };

  return (
    <div className="map-columns">
      <StopForm
        shooter={shooter}
        onAdd={(stop) => {
          setFault(full ? `A card has at most ${MOST_STOPS} stops.` : null);
          if (!full) setStops([...stops, stop]);
        }}
      />
      <form
        className="panel"
        aria-labelledby="card-form"
        onSubmit={(submit) => {
          submit.preventDefault();
          void save();
        }}
      >
        <h2 id="card-form">The card</h2>
        <p role="status" className="lead">
          {attemptsOn(stops)} {attemptsOn(stops) === 1 ? 'shot' : 'shots'}, {stops.length}{' '}
          {stops.length === 1 ? 'stop' : 'stops'}
        </p>
        <StopList stops={stops} onChange={setStops} />
        <label className="field">
          Name of the card
          <input
            value={name}
            maxLength={LONGEST_NAME}
            autoComplete="off"
            aria-describedby={fault === null ? undefined : 'card-fault'}
            onChange={(change) => setName(change.target.value)}
          />
        </label>
        {fault === null ? null : (
          <p id="card-fault" className="notice warn" role="alert">
            {fault}
          </p>
        )}
        <div className="row">
          <button type="submit" className="button main" disabled={busy}>
            Keep this card
          </button>
          <button type="button" className="button" onClick={() => onDone(null)}>
            Leave without it
          </button>
        </div>
      </form>
    </div>
  );
}
