import { useState } from 'react';

import type { GameId } from '../../basics/ids.ts';
import { LONGEST_GAME_NAME } from '../../pressure/gamePlan.ts';
import { draftFault, gameFile, keepGame, type GameDraft } from '../../store/gameActions.ts';
import { writeAddress } from '../../store/places.ts';
import { saveFile } from '../files/saveFile.ts';
import { useDoors, useGym } from '../gymContext.ts';

interface Props {
  readonly draft: GameDraft;
  /** The game that is changed; null for a new one. */
  readonly own: GameId | null;
  readonly onName: (name: string) => void;
}

/** The name of a game, and the ways to keep it, to play it and to hand it on. */
export function KeepGame({ draft, own, onName }: Props) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const [kept, setKept] = useState<{ readonly id: GameId; readonly draft: GameDraft } | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const id = kept?.id ?? own;
  const keep = async () => {
    const wrong = draftFault(book, draft, id);
    setFault(wrong);
    setSaid(null);
    if (wrong !== null) return;
    setBusy(true);
    const saved = await keepGame(gym, draft, id);
    setBusy(false);
    if (saved === null) return;
    setKept({ id: saved, draft });
    setSaid(`${draft.name.trim()} is kept. It stands first among the games.`);
  };
  const share = async () => {
    const file = await gameFile(book, draft);
    saveFile(file);
    setSaid(
      `${file.name} goes to where this device keeps its downloads. Send it to whoever wants to play it.`,
    );
  };
  const asKept = kept !== null && kept.draft === draft;
  return (
    <form
      className="panel"
      aria-labelledby="keep-game"
      onSubmit={(submit) => {
        submit.preventDefault();
        void keep();
      }}
    >
      <h2 id="keep-game">Keep it</h2>
      <label className="field">
        Name of the game
        <input
          value={draft.name}
          maxLength={LONGEST_GAME_NAME}
          autoComplete="off"
          aria-describedby={fault === null ? undefined : 'game-fault'}
          onChange={(change) => {
            setFault(null);
            onName(change.target.value);
          }}
        />
      </label>
      {fault === null ? null : (
        <p id="game-fault" className="notice warn" role="alert">
          {fault}
        </p>
      )}
      <p role="status" className={said === null ? 'unseen' : 'notice'}>
        {said}
      </p>
      <div className="row">
        <button type="submit" className={asKept ? 'button' : 'button main'} disabled={busy}>
          {id === null ? 'Keep this game' : 'Keep the change'}
        </button>
        {asKept ? (
          <>
            <a className="button main" href={writeAddress('pressured', kept.id)}>
              Play it
            </a>
            <button type="button" className="button" onClick={() => void share()}>
              Hand it on
            </button>
          </>
        ) : null}
        <a className="button" href={writeAddress('games')}>
          {asKept ? 'All games' : 'Leave without it'}
        </a>
      </div>
    </form>
  );
}
