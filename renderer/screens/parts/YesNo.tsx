import { Choice } from './Choice.tsx';

interface Props {
  readonly question: string;
  readonly hint?: string;
  readonly value: boolean;
  readonly onChoose: (value: boolean) => void;
}

const ANSWERS = [
  { value: 'yes', words: 'Yes' },
  { value: 'no', words: 'No' },
] as const;

/** A question that is answered by yes or no. */
export function YesNo({ value, onChoose, ...asked }: Props) {
  return (
    <Choice
      {...asked}
      answers={ANSWERS}
      value={value ? 'yes' : 'no'}
      onChoose={(answer) => onChoose(answer === 'yes')}
    />
  );
}
