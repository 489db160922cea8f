import { useState } from 'react';

import { spotWords } from '../../court/spots.ts';
import type { SharedGame } from '../../log/gameFile.ts';
import { bringGameIn, planGameImport, readSharedGame } from '../../store/gameActions.ts';
import type { GamePrices } from '../../store/gamePrices.ts';
import { goalWords } from '../gameWords.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { priceWords } from './priceWords.ts';

interface Props {
  readonly prices: GamePrices;
  readonly onSaid: (words: string | null) => void;
}

/** A game somebody handed on: choose the file, see what it is, then say yes. */
export function GameFileIn({ prices, onSaid }: Props) {
  const [chosen, setChosen] = useState<SharedGame | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const take = async (file: File | undefined) => {
    if (!file) return;
    onSaid(null);
    setChosen(null);
    setFault(null);
    try {
      const reading = await readSharedGame(new Uint8Array(await file.arrayBuffer()));
      if (reading.sound) setChosen(reading.game);
      else setFault(`${file.name} cannot be taken. ${reading.reason}`);
    } catch {
      setFault(`${file.name} could not be opened. Choose it again.`);
    }
  };
  const done = (words: string | null) => {
    setChosen(null);
    onSaid(words);
  };
  return (
    <section className="panel" aria-labelledby="game-in">
      <h2 id="game-in">A game from somebody else</h2>
      <label className="drop">
        <input
          type="file"
          accept=".json,application/json"
          onChange={(change) => {
            void take(change.target.files?.[0]);
            change.target.value = '';
          }}
        />
        <span className="drop-name">Choose a game file</span>
        <span>or drop it here</span>
      </label>
      {fault === null ? null : (
        <p className="notice warn" role="alert">
          {fault} Nothing was written.
        </p>
      )}
      {chosen ? <Question shared={chosen} prices={prices} onDone={done} /> : null}
    </section>
  );
}

interface QuestionProps {
  readonly shared: SharedGame;
  readonly prices: GamePrices;
  readonly onDone: (words: string | null) => void;
}

function Question({ shared, prices, onDone }: QuestionProps) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const [busy, setBusy] = useState(false);
  const plan = planGameImport(book, shared);
  const { game, newSpots, otherSpots, unplaced, known, full } = plan;
  const yes = async () => {
    setBusy(true);
    const id = await bringGameIn(gym, plan);
    setBusy(false);
    if (id !== null) onDone(`${game.name} is kept. It stands first in the list.`);
  };
  return (
    <div className="notice" role="status">
      <p className="lead">{game.name}</p>
      <p>{goalWords(game.plan, game.stops)}.</p>
      <p>{priceWords(prices.price(game), game.plan)}</p>
      {newSpots.length === 0 ? null : (
        <p>New spots on your floor: {newSpots.map(({ spot }) => spotWords(spot)).join(', ')}.</p>
      )}
      {otherSpots.length === 0 ? null : (
        <p>
          You have {otherSpots.join(', ')} already, in another place. Yours stays where it is, and the game is
          shot from there.
        </p>
      )}
      {unplaced.length === 0 ? null : (
        <p>
          Nobody says where {unplaced.join(', ')} {unplaced.length === 1 ? 'is' : 'are'}. Put it on the floor
          under Cards and spots.
        </p>
      )}
      <div className="row">
        {known ? <p>You have this very game already.</p> : null}
        {full ? <p>You keep as many games as there is room for. Remove one first.</p> : null}
        {known || full ? null : (
          <button type="button" className="button main" disabled={busy} onClick={() => void yes()}>
            Yes, keep it
          </button>
        )}
        <button type="button" className="button" disabled={busy} onClick={() => onDone(null)}>
          {known || full ? 'Close' : 'No, leave it'}
        </button>
      </div>
    </div>
  );
}
