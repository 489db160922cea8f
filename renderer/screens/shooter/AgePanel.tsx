import { useState } from 'react';

import { isoDateAt } from '../../basics/days.ts';
import type { Shooter } from '../../log/book.ts';
import { FAVOURS } from '../../pressure/stakes.ts';
import { allowFavours, tellAge } from '../../store/ageActions.ts';
import { yearDayWords } from '../dayWords.ts';
import { useDoors } from '../gymContext.ts';
import { Choice } from '../parts/Choice.tsx';
import { AdultStep } from './AdultStep.tsx';

const ANSWERS = [
  { value: 'yes', words: 'Yes' },
  { value: 'no', words: 'No' },
] as const;

interface ChoiceProps {
  readonly name: string;
  /** Null where nobody told. */
  readonly value: boolean | null;
  readonly onTell: (under18: boolean) => void;
}

/** Whether a shooter is under age. */
export function AgeChoice({ name, value, onTell }: ChoiceProps) {
  return (
    <Choice
      question={name === '' ? 'Under 18?' : `Is ${name} under 18?`}
      hint="Under 18 nothing is put on the line, and a video needs a guardian’s word."
      answers={ANSWERS}
      value={value === null ? null : value ? 'yes' : 'no'}
      onChoose={(answer) => onTell(answer === 'yes')}
    />
  );
}

/** What the age of a shooter means here, open to every adult who looks; what loosens it takes an adult’s step. */
export function AgePanel({ shooter }: { readonly shooter: Shooter }) {
  const { gym } = useDoors();
  const { id, name, under18 } = shooter;
  if (under18 === undefined) {
    return (
      <section className="panel" aria-label="Age">
        <AgeChoice name={name} value={null} onTell={(young) => void tellAge(gym, id, young)} />
      </section>
    );
  }
  return (
    <section className="panel" aria-label="Age">
      <h2>{under18 ? `${name} is under 18` : `${name} is 18 or older`}</h2>
      {under18 ? (
        <Minor shooter={shooter} />
      ) : (
        <div className="row">
          <button type="button" className="button" onClick={() => void tellAge(gym, id, true)}>
            No, under 18
          </button>
        </div>
      )}
    </section>
  );
}

type Step = 'favours' | 'of age';

function Minor({ shooter: { id, name, favoursSince } }: { readonly shooter: Shooter }) {
  const { gym } = useDoors();
  const [step, setStep] = useState<Step | null>(null);
  const { zone } = gym.moment();
  if (step !== null) {
    const done = async () => {
      await (step === 'favours' ? allowFavours(gym, id, true) : tellAge(gym, id, false));
      setStep(null);
    };
    return (
      <AdultStep
        name={name}
        what={step === 'favours' ? 'allow small favours' : `say that ${name} is 18`}
        onDone={() => void done()}
        onCancel={() => setStep(null)}
      />
    );
  }
  return (
    <>
      <ul>
        <li>
          {favoursSince === undefined
            ? 'Nothing is on the line, alone or in a group.'
            : `On the line alone: small favours, allowed by an adult on ${yearDayWords(isoDateAt(favoursSince, zone))}. In a group: nothing.`}
        </li>
        <li>No double or nothing.</li>
        <li>A video only with the word of a parent or guardian, and it stays on the friend’s device.</li>
        <li>
          No table ranks anyone: results stay on this device, and after a game of several they stand in the
          order of shooting.
        </li>
      </ul>
      {favoursSince === undefined ? (
        <p className="quiet">The favours an adult can allow: {FAVOURS.join(', ').toLowerCase()}.</p>
      ) : null}
      <div className="row">
        {favoursSince === undefined ? (
          <button type="button" className="button" onClick={() => setStep('favours')}>
            An adult: allow small favours
          </button>
        ) : (
          <button type="button" className="button" onClick={() => void allowFavours(gym, id, false)}>
            No favours any more
          </button>
        )}
        <button type="button" className="button plain" onClick={() => setStep('of age')}>
          {name} is 18 now
        </button>
      </div>
    </>
  );
}
