import { Choice } from './Choice.tsx';

interface Props {
  readonly question: string;
  readonly hint: string;
  readonly value: number | null;
  readonly onRate: (value: number) => void;
}

const STEPS = Array.from({ length: 11 }, (_, step) => ({ value: String(step), words: String(step) }));

/** A rating from 0 to 10. */
export function Rating({ question, hint, value, onRate }: Props) {
  return (
    <Choice
      question={question}
      hint={hint}
      answers={STEPS}
      value={value === null ? null : String(value)}
      onChoose={(step) => onRate(Number(step))}
      scale
    />
  );
}

/** Asked in the same words before every round, relaxed or pressured, and again after it. */
export const NERVES_BEFORE = {
  question: 'How nervous are you right now?',
  hint: '0 = not at all, 10 = as nervous as you have ever been on a court.',
} as const;

export const NERVES_AFTER = {
  question: 'How nervous were you during the round?',
  hint: NERVES_BEFORE.hint,
} as const;

export const EFFORT_AFTER = {
  question: 'How hard was the round for your body?',
  hint: '0 = rest, 10 = the hardest you can do.',
} as const;
