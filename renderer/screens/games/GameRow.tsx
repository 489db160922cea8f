import { useState } from 'react';

import type { ListedGame } from '../../store/gameActions.ts';
import { gameFile, removeGame } from '../../store/gameActions.ts';
import type { Price } from '../../store/gamePrices.ts';
import { writeAddress } from '../../store/places.ts';
import { saveFile } from '../files/saveFile.ts';
import { goalWords } from '../gameWords.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { chanceFigure, lengthSentence } from './priceWords.ts';

interface Props {
  readonly game: ListedGame;
  /** Undefined while it is being worked out, and for a game that cannot be played. */
  readonly price: Price | undefined;
  readonly onSaid: (words: string) => void;
}

/** One game of the list: what it is, how it would go, and what can be done with it. */
export function GameRow({ game, price, onSaid }: Props) {
  const [asked, setAsked] = useState(false);
  return (
    <li className="game-row">
      <div className="game-words">
        <h3>{game.name}</h3>
        <p>{game.words ?? `${goalWords(game.plan, game.stops)}.`}</p>
        {price ? <p className="quiet">{lengthSentence(price, game.plan)}</p> : null}
      </div>
      <ChanceFigure price={price} />
      {asked ? (
        <RemoveQuestion game={game} onSaid={onSaid} onKeep={() => setAsked(false)} />
      ) : (
        <Buttons game={game} onSaid={onSaid} onRemove={() => setAsked(true)} />
      )}
    </li>
  );
}

function ChanceFigure({ price }: Pick<Props, 'price'>) {
  return (
    <p className="game-chance">
      <span className="figure">{price ? chanceFigure(price.chance) : '–'}</span>
      <span>wins in 100</span>
    </p>
  );
}

interface ButtonProps extends Pick<Props, 'game' | 'onSaid'> {
  readonly onRemove: () => void;
}

function Buttons({ game, onSaid, onRemove }: ButtonProps) {
  const { gym } = useDoors();
  const busy = useGym(({ book }) => book.open !== null);
  const share = async () => {
    const file = await gameFile(gym.store.getState().book, game);
    saveFile(file);
    onSaid(
      `${file.name} goes to where this device keeps its downloads. Send it to whoever wants to play it.`,
    );
  };
  const named = <span className="unseen">: {game.name}</span>;
  return (
    <div className="row">
      {busy ? null : (
        <a className="button main" href={writeAddress('pressured', game.id)}>
          Play{named}
        </a>
      )}
      <a className="button" href={writeAddress('game', game.id)}>
        {game.own ? 'Change it' : 'Make one like it'}
        {named}
      </a>
      <button type="button" className="button plain" onClick={() => void share()}>
        Hand it on{named}
      </button>
      {game.own ? (
        <button type="button" className="button plain" onClick={onRemove}>
          Remove{named}
        </button>
      ) : null}
    </div>
  );
}

interface QuestionProps extends Pick<Props, 'game' | 'onSaid'> {
  readonly onKeep: () => void;
}

function RemoveQuestion({ game, onSaid, onKeep }: QuestionProps) {
  const { gym } = useDoors();
  return (
    <div className="notice warn" role="alert">
      <p>{game.name} can no longer be chosen. Rounds of it stay in the book.</p>
      <div className="row">
        <button
          type="button"
          className="button"
          onClick={() =>
            void removeGame(gym, game.id).then((saved) => {
              if (saved) onSaid(`${game.name} is gone.`);
            })
          }
        >
          Yes, remove it
        </button>
        <button type="button" className="button main" onClick={onKeep}>
          Keep
        </button>
      </div>
    </div>
  );
}
