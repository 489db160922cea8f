import { useState } from 'react';

import { SessionsChart } from '../../charts/SessionsChart.tsx';
import { addDays } from '../../basics/days.ts';
import type { Figures, Stretch } from '../../store/figures.ts';
import { dayWords, shortDayWords } from '../dayWords.ts';
import { Choice } from '../parts/Choice.tsx';
import { ConditionKey } from './ConditionKey.tsx';
import { Fold } from './Fold.tsx';
import { RateCells, RateTable } from './RateTable.tsx';

/** Single sessions are drawn for so many days; a longer season is looked at by week. */
const SESSION_DAYS = 12 * 7;

/** The rates and the drop over the season, as they were shot. */
export function OverTime({ figures }: { readonly figures: Pick<Figures, 'sessions' | 'weeks'> }) {
  const [each, setEach] = useState<'session' | 'week'>('session');
  const stretches = each === 'week' ? figures.weeks : latest(figures.sessions);
  if (stretches.length === 0) return null;
  const cut = stretches.length < figures.sessions.length && each === 'session';
  return (
    <Fold title="Over time, as shot">
      <Choice
        question="One mark for each"
        answers={[
          { value: 'session', words: 'session' },
          { value: 'week', words: 'week' },
        ]}
        value={each}
        onChoose={setEach}
      />
      <ConditionKey drop />
      <SessionsChart
        label={`Relaxed, pressured and drop by ${each}; the table below holds the same.`}
        marks={stretches}
        each={each}
        dayWords={shortDayWords}
      />
      <p className="quiet">
        Long bars mean few shots. A week without shots stays empty.
        {cut ? ' These are the latest twelve weeks; by week you see all of them.' : ''}
      </p>
      <RateTable
        summary={`The numbers by ${each}`}
        label="Numbers over time"
        first={each === 'week' ? 'Week, first session' : 'Session'}
      >
        {stretches.toReversed().map((stretch) => (
          <tr key={stretch.key}>
            <th scope="row">
              {dayWords(stretch.date)}
              {each === 'week' ? (
                <>
                  <br />
                  <span className="quiet">{stretch.week}</span>
                </>
              ) : null}
            </th>
            <RateCells summary={stretch} />
          </tr>
        ))}
      </RateTable>
    </Fold>
  );
}

function latest(sessions: readonly Stretch[]): readonly Stretch[] {
  const last = sessions.at(-1);
  if (!last) return sessions;
  const from = addDays(last.date, -SESSION_DAYS);
  return sessions.filter(({ date }) => date > from);
}
