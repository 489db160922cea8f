import { useId } from 'react';

interface Props<T extends string> {
  readonly question: string;
  /** One plain sentence under the question. */
  readonly hint?: string;
  readonly answers: readonly { readonly value: T; readonly words: string; readonly disabled?: boolean }[];
  readonly value: T | null;
  readonly onChoose: (value: T) => void;
  /** Eleven small answers in a row, 0 to 10. */
  readonly scale?: boolean;
}

/** A question with a few answers, all in sight at once; arrow keys move between them. */
export function Choice<T extends string>({
  question,
  hint,
  answers,
  value,
  onChoose,
  scale = false,
}: Props<T>) {
  const name = useId();
  return (
    <fieldset className="choice">
      <legend>{question}</legend>
      {hint === undefined ? null : <p className="quiet">{hint}</p>}
      <div className={scale ? 'answers scale' : 'answers'}>
        {answers.map((answer) => (
          <label className="answer" key={answer.value}>
            <input
              type="radio"
              name={name}
              value={answer.value}
              checked={value === answer.value}
              disabled={answer.disabled === true}
              onChange={() => onChoose(answer.value)}
            />
            <span>{answer.words}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
