import { useState } from 'react';

import { MOST_ATTEMPTS, type Stop } from '../../court/cards.ts';
import { SHOT_WORDS, SPOTS, spotWords, type ShotKind, type SpotName } from '../../court/spots.ts';
import type { Shooter } from '../../log/book.ts';
import { useGym } from '../gymContext.ts';
import { Choice } from '../parts/Choice.tsx';
import { Stepper } from '../parts/Stepper.tsx';
import { upperFirst } from '../parts/upperFirst.ts';
import { TouchMap } from './TouchMap.tsx';

interface Props {
  readonly shooter: Shooter;
  readonly onAdd: (stop: Stop) => void;
}

const FIELD_SHOTS: readonly ShotKind[] = ['catch', 'dribble-left', 'dribble-right', 'form'];
const LINE_SHOTS: readonly ShotKind[] = ['free-throw', 'catch', 'form'];

/** One more stop: where from, how, and how many. */
export function StopForm({ shooter, onAdd }: Props) {
  const ownSpots = useGym(({ book }) => book.ownSpots);
  const [spot, setSpot] = useState<SpotName>('left-corner');
  const [shot, setShot] = useState<ShotKind>('catch');
  const [attempts, setAttempts] = useState(5);
  const kinds = spot === 'free-throw' ? LINE_SHOTS : FIELD_SHOTS;

  const choose = (next: SpotName) => {
    setSpot(next);
    const possible = next === 'free-throw' ? LINE_SHOTS : FIELD_SHOTS;
    // From the line a free throw is meant; away from it, whatever was shot last.
    if (next === 'free-throw') setShot('free-throw');
    else if (!possible.includes(shot)) setShot('catch');
  };

  return (
    <section className="panel stop-form" aria-labelledby="stop-form">
      <h2 id="stop-form">The next stop</h2>
      <TouchMap
        shooter={shooter}
        label="Half court. Touch a spot to choose it, or choose it by its name."
        chosen={spot}
        onChoose={choose}
      />
      <details className="by-name">
        <summary>
          From: <strong>{spotWords(spot)}</strong>. Choose it by name
        </summary>
        <Choice
          question="Where from?"
          answers={[...SPOTS, ...ownSpots.keys()].map((value) => ({ value, words: spotWords(value) }))}
          value={spot}
          onChoose={choose}
        />
      </details>
      <Choice
        question="How does the shot come?"
        answers={kinds.map((value) => ({ value, words: upperFirst(SHOT_WORDS[value]) }))}
        value={shot}
        onChoose={setShot}
      />
      <div className="add-stop">
        <Stepper
          label="Attempts at this stop"
          value={attempts}
          min={1}
          max={MOST_ATTEMPTS}
          onChange={setAttempts}
        />
        <button type="button" className="button main" onClick={() => onAdd({ spot, shot, attempts })}>
          Add this stop
          <span className="unseen">
            : {spotWords(spot)}, {SHOT_WORDS[shot]} × {attempts}
          </span>
        </button>
      </div>
    </section>
  );
}
