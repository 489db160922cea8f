import { useMemo } from 'react';

import { gameFault } from '../games/gameFault.ts';
import type { Shooter } from '../log/book.ts';
import { gameById } from '../store/gameActions.ts';
import { writeAddress } from '../store/places.ts';
import { useGym } from './gymContext.ts';
import { Page } from './parts/Page.tsx';
import { RoundSetupScreen } from './RoundSetupScreen.tsx';

/** Sets a pressured round up that is played by a game of the list. */
export function GameSetupScreen({ shooter, about }: { readonly shooter: Shooter; readonly about: string }) {
  const games = useGym(({ book }) => book.games);
  const game = useMemo(() => gameById({ games }, about), [games, about]);
  const fault = game && gameFault(game.plan, game.stops);
  if (game && fault === null) return <RoundSetupScreen shooter={shooter} condition="pressured" game={game} />;
  return (
    <Page title={game ? game.name : 'This game is gone'}>
      <p>{fault ?? 'It was removed, or it was made on another device.'}</p>
      <a className="button main" href={writeAddress('games')}>
        To the games
      </a>
    </Page>
  );
}
