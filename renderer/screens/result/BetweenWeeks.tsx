import { useEffect, useState } from 'react';

import type { Change, ChokeIndex, IndexWeek } from '../../stats/model/chokeIndex.ts';
import { yearDayWords } from '../dayWords.ts';
import { useDoors } from '../gymContext.ts';
import { changeWords } from './changeWords.ts';
import { PointsAndShares } from './PointsAndShares.tsx';

/** How the drop moved between two weeks of the shooter's choice; at first from the first to the last. */
export function BetweenWeeks({ index }: { readonly index: ChokeIndex }) {
  const shot = index.weeks.filter(({ empty }) => !empty);
  const first = shot[0];
  const last = shot.at(-1);
  const [chosen, setChosen] = useState<Partial<Ends>>({});
  if (!index.change || !first || !last) {
    return <p className="quiet">From the second week on you see here how the drop moves.</p>;
  }
  const held = (week: string | undefined, otherwise: IndexWeek): IndexWeek =>
    shot.find((one) => one.week === week) ?? otherwise;
  const from = held(chosen.from, first);
  const to = held(chosen.to, last);
  return (
    <section className="between-weeks" aria-labelledby="between-weeks">
      <h3 id="between-weeks">Between two weeks</h3>
      <div className="columns">
        <WeekSelect
          label="From the week of"
          weeks={shot}
          value={from}
          onChoose={(week) => setChosen({ ...chosen, from: week })}
        />
        <WeekSelect
          label="To the week of"
          weeks={shot}
          value={to}
          onChoose={(week) => setChosen({ ...chosen, to: week })}
        />
      </div>
      <Answer index={index} ends={[from, to]} />
      <PointsAndShares index={index} />
    </section>
  );
}

/** Names of weeks, as ISO 8601 writes them. */
interface Ends {
  readonly from: string;
  readonly to: string;
}

interface SelectProps {
  readonly label: string;
  readonly weeks: readonly IndexWeek[];
  readonly value: IndexWeek;
  readonly onChoose: (week: string) => void;
}

function WeekSelect({ label, weeks, value, onChoose }: SelectProps) {
  return (
    <label className="field">
      {label}
      <select value={value.week} onChange={(change) => onChoose(change.target.value)}>
        {weeks.map(({ week, monday }) => (
          <option key={week} value={week}>
            {yearDayWords(monday)}
          </option>
        ))}
      </select>
    </label>
  );
}

interface AnswerProps {
  readonly index: ChokeIndex;
  readonly ends: readonly [IndexWeek, IndexWeek];
}

function Answer({ index, ends }: AnswerProps) {
  const [from, to] = ends[0].week <= ends[1].week ? ends : [ends[1], ends[0]];
  const change = useChange(index, from.week, to.week);
  if (from === to) return <p>Choose two different weeks.</p>;
  if (change === 'asking') return <p className="quiet">One moment …</p>;
  if (change === null) return <p>These two weeks cannot be compared just now.</p>;
  const { headline, caution } = changeWords(change, from.monday, to.monday);
  return (
    <p className="lead" aria-live="polite">
      {headline} {caution}
    </p>
  );
}

/** Asked of the study at hand; from the first week to the last it is known already. Null where there is no answer. */
function useChange(index: ChokeIndex, from: string, to: string): Change | 'asking' | null {
  const { studyRoom } = useDoors();
  const known = index.change?.from === from && index.change.to === to ? index.change : null;
  const [answer, setAnswer] = useState<Answered | null>(null);
  useEffect(() => {
    if (known || from === to) return undefined;
    let overtaken = false;
    const hear = (change: Change | null): void => {
      if (!overtaken) setAnswer({ index, from, to, change });
    };
    studyRoom.changeBetween(from, to).then(hear, () => hear(null));
    return () => {
      overtaken = true;
    };
  }, [studyRoom, index, from, to, known]);
  if (known) return known;
  // An answer to an earlier question is none.
  const mine = answer?.index === index && answer.from === from && answer.to === to;
  return mine ? answer.change : 'asking';
}

interface Answered extends Ends {
  readonly index: ChokeIndex;
  readonly change: Change | null;
}
