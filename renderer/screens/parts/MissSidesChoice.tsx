import { useDoors, useGym } from '../gymContext.ts';
import { Choice } from './Choice.tsx';

/** Whether a miss is put in with where it went. */
export function MissSidesChoice() {
  const { gym } = useDoors();
  const on = useGym((state) => state.settings.missSides);
  return (
    <Choice
      question="Note where a miss went?"
      hint="Short, long, left or right: one tap on that edge of the miss side."
      answers={[
        { value: 'no', words: 'No' },
        { value: 'yes', words: 'Yes' },
      ]}
      value={on ? 'yes' : 'no'}
      onChoose={(answer) => gym.set({ missSides: answer === 'yes' })}
    />
  );
}
