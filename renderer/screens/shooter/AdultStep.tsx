import { useId, useState } from 'react';

import { rngFromSeed } from '../../basics/chance.ts';
import { useDoors } from '../gymContext.ts';

interface Props {
  readonly name: string;
  /** What is done after the promise: `allow small favours`. */
  readonly what: string;
  readonly onDone: () => void;
  readonly onCancel: () => void;
}

/** A step no child takes by accident: a promise, and a sum. It is no lock, and says so. */
export function AdultStep({ name, what, onDone, onCancel }: Props) {
  const { gym } = useDoors();
  const id = useId();
  const [[one, other]] = useState(() => twoNumbers(gym.newSeed()));
  const [sum, setSum] = useState('');
  const [wrong, setWrong] = useState(false);
  return (
    <form
      className="notice"
      aria-label={`An adult: ${what}`}
      onSubmit={(submit) => {
        submit.preventDefault();
        if (Number(sum) === one + other && sum.trim() !== '') onDone();
        else setWrong(true);
      }}
    >
      <p>
        “I am an adult and answer for {name} here: a parent, a guardian, or a coach with their word. I have
        talked with {name} about it, and keep an eye on it.”
      </p>
      <label className="field">
        To {what}: what is {one} + {other}?
        <input
          value={sum}
          inputMode="numeric"
          autoComplete="off"
          maxLength={4}
          aria-invalid={wrong}
          aria-describedby={wrong ? `${id}-wrong` : undefined}
          onChange={(change) => {
            setSum(change.target.value);
            setWrong(false);
          }}
        />
      </label>
      {wrong ? (
        <p id={`${id}-wrong`} className="notice warn" role="alert">
          That is not the sum. Nothing was changed.
        </p>
      ) : null}
      <p className="quiet">
        This is a promise, not a lock: whoever can add gets through. What was set, and since when, stands on
        this page for every adult to see.
      </p>
      <div className="row">
        <button type="submit" className="button">
          I promise
        </button>
        <button type="button" className="button main" onClick={onCancel}>
          Leave it as it is
        </button>
      </div>
    </form>
  );
}

/** Two numbers whose sum needs carrying over. */
function twoNumbers(seed: number): readonly [number, number] {
  const rng = rngFromSeed(seed);
  return [10 * (2 + rng.below(6)) + 5 + rng.below(5), 10 * (2 + rng.below(6)) + 5 + rng.below(5)];
}
