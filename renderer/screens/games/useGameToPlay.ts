import { useMemo, useState } from 'react';

import type { Shooter } from '../../log/book.ts';
import { shotsOnRecord } from '../../store/forecast.ts';
import type { ListedGame } from '../../store/gameActions.ts';
import { gameToPlay, type GameToPlay, type HowHard } from '../../store/gameToPlay.ts';
import { clockOf, type PressureWish } from '../../store/pressureWish.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { useGamePrices } from './usePrices.ts';

/** A game in the form of a pressured round. */
export interface GameInForm {
  readonly game: ListedGame;
  readonly toPlay: GameToPlay;
  readonly hard: HowHard;
  readonly setHard: (hard: HowHard) => void;
  /** Shots on the record from its spots. */
  readonly shots: number;
  /** Of the round: drawn when the form is opened, since the chance that is shown may hang on it. */
  readonly seed: number;
}

/** The game that is set up, as hard as is wanted; null where a round is set up without one. */
export function useGameToPlay(
  shooter: Shooter,
  game: ListedGame | null,
  wish: PressureWish,
): GameInForm | null {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const prices = useGamePrices(shooter);
  const [seed] = useState(() => gym.newSeed());
  const [hard, setHard] = useState<HowHard>('as it is');
  const { clock, roundSeconds, shotSeconds } = wish;
  const toPlay = useMemo(
    () => game && gameToPlay(prices, game, hard, clockOf({ clock, roundSeconds, shotSeconds }), seed),
    [prices, game, hard, clock, roundSeconds, shotSeconds, seed],
  );
  const shots = useMemo(
    () => (game ? shotsOnRecord(book, shooter.id, game.stops) : 0),
    [book, shooter, game],
  );
  return game && toPlay ? { game, toPlay, hard, setHard, shots, seed } : null;
}
