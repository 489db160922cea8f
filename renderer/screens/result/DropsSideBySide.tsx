import { IntervalChart } from '../../charts/IntervalChart.tsx';
import type { DropEstimate } from '../../stats/drop.ts';
import { dropSpan, pointsWords } from '../numberWords.ts';
import { FoldedTable } from '../parts/FoldedTable.tsx';
import { aroundNone } from './aroundNone.ts';

interface Props {
  /** How the spoken words begin, where the rows do not say it all. */
  readonly label?: string;
  readonly rows: readonly (DropEstimate & { readonly name: string })[];
  /** Names the table behind the drawing; left out where the numbers stand in another one. */
  readonly behind?: string;
}

/** Drops on one axis, to be compared. */
export function DropsSideBySide({ label, rows, behind }: Props) {
  const told = rows.map((row) => `${row.name} ${pointsWords(row.points)}, from ${dropSpan(row)}`);
  return (
    <>
      <IntervalChart
        label={`${label === undefined ? '' : `${label}: `}${told.join('; ')}.`}
        rows={rows.map((row) => ({
          kind: 'drop',
          name: `${row.name} ${pointsWords(row.points)}`,
          words: dropSpan(row),
          value: row.points,
          low: row.low,
          high: row.high,
        }))}
        axis={aroundNone(rows, ['better under pressure', 'worse'])}
      />
      {behind === undefined ? null : (
        <FoldedTable
          summary={behind}
          heads={['From', 'Points lost', 'Span']}
          rows={rows.map((row) => ({ name: row.name, cells: [pointsWords(row.points), dropSpan(row)] }))}
        />
      )}
    </>
  );
}
