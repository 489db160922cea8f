import type { GamePlan } from '../../pressure/gamePlan.ts';
import type { GameToPlay, HowHard } from '../../store/gameToPlay.ts';
import type { ListedGame } from '../../store/gameActions.ts';
import { goalWords, sceneWords } from '../gameWords.ts';
import { Choice } from '../parts/Choice.tsx';
import { YesNo } from '../parts/YesNo.tsx';
import { chanceFigure, lengthSentence } from './priceWords.ts';

interface Props {
  readonly game: ListedGame;
  readonly toPlay: GameToPlay;
  readonly hard: HowHard;
  readonly onHard: (hard: HowHard) => void;
  /** Shots on the record from the spots of the game. */
  readonly shots: number;
  readonly showChance: boolean;
  readonly onShowChance: (show: boolean) => void;
}

const HARD: readonly { readonly value: string; readonly words: string; readonly hard: HowHard }[] = [
  { value: 'as it is', words: 'As it is', hard: 'as it is' },
  { value: '0.67', words: 'Two in three', hard: 0.67 },
  { value: '0.5', words: 'Even', hard: 0.5 },
  { value: '0.33', words: 'One in three', hard: 0.33 },
];

/** The score and the time, as they stand on the court. */
function Scene({ plan }: { readonly plan: GamePlan }) {
  if (plan.family !== 'trips' || plan.scene === null) return null;
  const { down, left } = plan.scene;
  return (
    <p className="lead">
      {sceneWords(-down, left)}, {plan.kind}
    </p>
  );
}

/** A few shots say little. */
const FEW = 50;

/** In place of the mark: the game, how hard it should be, and what that comes to. */
export function GamePanel({ game, toPlay, hard, onHard, shots, showChance, onShowChance }: Props) {
  const { played, price } = toPlay;
  return (
    <section className="panel" aria-label="The game">
      <h2>The game</h2>
      {game.words === null ? null : <p>{game.words}</p>}
      <Scene plan={played.plan} />
      <Choice
        question="How hard should it be?"
        hint="The app finds the number that comes nearest for you; chances move in steps."
        answers={HARD}
        value={String(hard)}
        onChoose={(answer) => onHard(HARD.find(({ value }) => value === answer)?.hard ?? 'as it is')}
      />
      <div role="status" className="game-outlook">
        <p>
          <strong>{goalWords(played.plan, game.stops)}.</strong>
        </p>
        <p className="game-chance wide">
          <span className="figure">{chanceFigure(price.chance)}</span>
          <span>wins in 100 {shots === 0 ? 'as a starting guess' : 'on your record'}</span>
        </p>
        <p>{lengthSentence(price, played.plan)}</p>
      </div>
      <p className="quiet">
        Good and bad days are counted in.
        {shots === 0 ? ' You have not shot from here yet.' : ''}
        {shots > 0 && shots < FEW ? ' Your record from here is still short, so this is rough.' : ''}
      </p>
      <YesNo question="Show the chance while you shoot?" value={showChance} onChoose={onShowChance} />
    </section>
  );
}
