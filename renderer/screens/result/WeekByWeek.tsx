import { WeeksChart } from '../../charts/WeeksChart.tsx';
import type { ChokeIndex, IndexWeek } from '../../stats/model/chokeIndex.ts';
import { shortDayWords, yearDayWords } from '../dayWords.ts';
import { dropSpan, percentSpan, pointsWords } from '../numberWords.ts';
import { BetweenWeeks } from './BetweenWeeks.tsx';
import { ConditionKey } from './ConditionKey.tsx';
import { RateTable } from './RateTable.tsx';

/** The season as the drop model sees it, week by week, and how the drop moved between any two of them. */
export function WeekByWeek({ index }: { readonly index: ChokeIndex }) {
  const { weeks } = index;
  if (weeks.length === 0) return null;
  return (
    <section className="panel">
      <h2>Week by week</h2>
      <ConditionKey drop />
      <WeeksChart
        label="Relaxed, pressured and drop week by week; the table below holds the same."
        weeks={weeks}
        dayWords={shortDayWords}
      />
      <p className="quiet">
        Good and bad days, tiredness and a changing mix of shots are taken out. The bands hold the truth nine
        times in ten. Where a line is pale and has no mark there were no such shots that week: it is only
        carried over from the weeks around it.
      </p>
      <RateTable
        summary="The numbers week by week"
        label="Numbers week by week"
        first="Week from"
        last="Shots"
      >
        {weeks.toReversed().map((week) => (
          <WeekRow key={week.week} week={week} />
        ))}
      </RateTable>
      <BetweenWeeks index={index} />
    </section>
  );
}

function WeekRow({ week }: { readonly week: IndexWeek }) {
  const { monday, points, shots, empty } = week;
  return (
    <tr>
      <th scope="row">
        {yearDayWords(monday)}
        <br />
        <span className="quiet">{week.week}</span>
      </th>
      {(['relaxed', 'pressured'] as const).map((condition) => (
        <td key={condition}>
          {Math.round(week[condition])} %
          <br />
          <span className="quiet">{percentSpan(week.spans[condition])}</span>
        </td>
      ))}
      <td>
        {pointsWords(points)}
        <br />
        <span className="quiet">{dropSpan(week)}</span>
      </td>
      <td>
        {empty ? (
          <span className="quiet">none, carried over</span>
        ) : (
          <>
            {shots.relaxed} relaxed, <br />
            {shots.pressured} pressured
          </>
        )}
      </td>
    </tr>
  );
}
