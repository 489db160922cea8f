import { turnsIn, type GroupWish } from '../../store/groupWish.ts';
import { Choice } from '../parts/Choice.tsx';
import { YesNo } from '../parts/YesNo.tsx';
import { TURN_WORDS } from './groupWords.ts';

interface Props {
  readonly wish: GroupWish;
  readonly onChange: (change: Partial<GroupWish>) => void;
}

/** When the turn passes, who begins, and whether there is a crowd. */
export function TakingTurns({ wish, onChange }: Props) {
  const { game, turns, order, crowd } = wish;
  const possible = turnsIn(game);
  return (
    <section className="panel" aria-label="Taking turns">
      {possible.length > 1 ? (
        <Choice
          question="When does the turn pass?"
          answers={possible.map((value) => ({ value, words: TURN_WORDS[value] }))}
          value={turns}
          onChoose={(value) => onChange({ turns: value })}
        />
      ) : (
        <p>
          {game.plan.family === 'duel'
            ? 'The turn passes after every shot.'
            : `One after the other plays the whole game${game.clock ? `, each against ${game.clock.seconds} s` : ''}.`}
        </p>
      )}
      <Choice
        question="Who shoots first?"
        answers={[
          { value: 'coin', words: wish.shooters.length > 2 ? 'Draw lots' : 'Toss a coin' },
          { value: 'listed', words: 'As named' },
        ]}
        value={order}
        onChoose={(value) => onChange({ order: value })}
      />
      <YesNo
        question="Crowd noise from the loudspeaker?"
        hint="It swells before the shot and answers makes and misses."
        value={crowd}
        onChoose={(loud) => onChange({ crowd: loud })}
      />
    </section>
  );
}
