import { useMemo, useState } from 'react';

import type { FileRound } from '../../log/csvRounds.ts';
import type { Retold } from '../../log/importRounds.ts';
import { importNotes } from '../../store/importNotes.ts';
import { bringIn, planRecords } from '../../store/recordFiles.ts';
import { todayAt } from '../../store/today.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { Choice } from '../parts/Choice.tsx';
import { doneOf, type Done } from './ImportDone.tsx';

interface Props {
  readonly name: string;
  readonly rounds: readonly FileRound[];
  /** Called once the file is done with; null where it was left. */
  readonly onDone: (done: Done | null) => void;
}

const RETOLD_ANSWERS: readonly { value: Retold; words: string }[] = [
  { value: 'replace', words: 'Corrections: replace the old ones' },
  { value: 'keep-both', words: 'Other rounds: keep both' },
];

/** What a sound file would do, and the yes or no to it. */
export function ImportPlan({ name, rounds, onDone }: Props) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const [retold, setRetold] = useState<Retold>('replace');
  const [busy, setBusy] = useState(false);
  // The plan is made anew whenever the log has moved on under it.
  // oxlint-disable-next-line react/exhaustive-deps
  const plan = useMemo(() => planRecords(gym, rounds, retold), [gym, rounds, retold, book]);
  const notes = useMemo(() => importNotes(book, rounds, todayAt(gym)), [gym, book, rounds]);
  const changes = plan.rounds + plan.replaced;

  const yes = async () => {
    setBusy(true);
    const saved = await bringIn(gym, plan);
    setBusy(false);
    if (saved) onDone(doneOf(plan));
  };

  return (
    <div className="notice" role="status">
      <p className="lead">{name} can be taken. It would:</p>
      <ul>
        <li>
          add {count(plan.rounds, 'round')}
          {plan.rounds === 0 ? null : <Days rounds={rounds} />}
        </li>
        {plan.replaced === 0 ? null : (
          <li>replace {count(plan.replaced, 'round')} brought in before, with corrections</li>
        )}
        {plan.newShooters.length === 0 ? null : (
          <li>
            add {count(plan.newShooters.length, 'shooter')}: {plan.newShooters.join(', ')}
          </li>
        )}
        {plan.doubles === 0 ? null : <li>leave out {count(plan.doubles, 'round')} that you already have</li>}
      </ul>
      <p>Shooters in it: {notes.shooters.join(', ')}.</p>
      {notes.newSpots.length === 0 ? null : (
        <p>
          New spots: <strong>{notes.newSpots.join(', ')}</strong>. Are they spots of your own? If one is only
          misspelt, mend it in the file first, or its shots will not be compared with the rest.
        </p>
      )}
      {notes.future.length === 0 ? null : (
        <p>
          <strong>{notes.future.join(', ')}</strong> {notes.future.length === 1 ? 'is' : 'are'} still to come.
          Is the year right?
        </p>
      )}
      {plan.beside === 0 ? null : (
        <p>
          {plan.beside === 1 ? 'One of these rounds has' : `${plan.beside} of these rounds have`} the same
          day, session and number as a round shot in the app, but other shots. Both would count. If it is the
          same round, do not bring it in.
        </p>
      )}
      {plan.retold === 0 ? null : (
        <Choice
          question={`${count(plan.retold, 'round')} came in before under the same day, session and number, but told differently. What are these?`}
          answers={RETOLD_ANSWERS}
          value={retold}
          onChoose={setRetold}
        />
      )}
      <div className="row">
        {changes === 0 ? (
          <p>There is nothing new in this file.</p>
        ) : (
          <button type="button" className="button main" disabled={busy} onClick={() => void yes()}>
            Yes, bring them in
          </button>
        )}
        <button type="button" className="button" disabled={busy} onClick={() => onDone(null)}>
          {changes === 0 ? 'Close' : 'No, leave it'}
        </button>
      </div>
    </div>
  );
}

/** The days a file speaks of. */
function Days({ rounds }: { readonly rounds: readonly FileRound[] }) {
  const days = rounds.map((round) => round.date).toSorted();
  const [first, last] = [days[0], days.at(-1)];
  if (first === last) return <span className="day"> of {first}</span>;
  return (
    <>
      ; the file runs from <span className="day">{first}</span> to <span className="day">{last}</span>
    </>
  );
}

function count(n: number, thing: string): string {
  return n === 1 ? `1 ${thing}` : `${n === 0 ? 'no' : n} ${thing}s`;
}
