import type { GamePrices, Priceable } from '../../store/gamePrices.ts';
import { gameFault } from '../../games/gameFault.ts';
import { goalWords } from '../gameWords.ts';
import { chanceFigure, lengthSentence } from './priceWords.ts';

interface Props {
  readonly game: Priceable;
  readonly prices: GamePrices;
  /** Decides which balls count double, where a coin does. */
  readonly seed?: number;
}

/** What wins a game, how likely that is and how long it takes; or why it cannot be played. */
export function GameOutlook({ game, prices, seed }: Props) {
  const fault = gameFault(game.plan, game.stops);
  if (fault !== null) {
    return (
      <p className="notice warn" role="status">
        {fault}
      </p>
    );
  }
  const price = prices.price(game, seed);
  return (
    <div className="game-outlook" role="status">
      <p>
        <strong>{goalWords(game.plan, game.stops)}.</strong>
      </p>
      <p className="game-chance wide">
        <span className="figure">{chanceFigure(price.chance)}</span>
        <span>wins in 100 at your rate</span>
      </p>
      <p>{lengthSentence(price, game.plan)}</p>
    </div>
  );
}
