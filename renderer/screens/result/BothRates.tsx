import { IntervalChart, type IntervalRow } from '../../charts/IntervalChart.tsx';
import type { Rated } from '../../stats/summary.ts';
import { SIMPLE_LEVEL, type Figures } from '../../store/figures.ts';
import { countWords, dropSpan, percent, pointsWords, rateSpan } from '../numberWords.ts';
import { FiguresTable } from '../parts/FoldedTable.tsx';
import { DropsSideBySide } from './DropsSideBySide.tsx';
import { Fold } from './Fold.tsx';

/** Relaxed and pressured side by side as they were shot, and what lies between them. */
export function BothRates({ figures }: { readonly figures: Figures }) {
  const { relaxed, pressured, drop } = figures;
  const rows = [rateRow('relaxed', 'Relaxed', relaxed), rateRow('pressured', 'Pressured', pressured)];
  return (
    <Fold title="As shot, side by side">
      <p className="quiet">
        The bare counts, matched by spot. Tiring, warming up and good and bad days are not reckoned with here;
        the sentence on top reckons with them.
      </p>
      <IntervalChart
        label={`Relaxed ${countWords(relaxed)}, ${rateSpan(relaxed)}. Pressured ${countWords(pressured)}, ${rateSpan(pressured)}.`}
        rows={rows.filter((row) => row !== null)}
        axis={{ from: 0, to: 100, step: 25, write: (value) => `${value} %` }}
      />
      {drop ? (
        <DropsSideBySide rows={[{ name: 'Drop', ...drop }]} />
      ) : (
        <p className="quiet">The drop between them can be told once one spot was shot both ways.</p>
      )}
      <Behind figures={figures} />
    </Fold>
  );
}

function rateRow(kind: 'relaxed' | 'pressured', name: string, rated: Rated): IntervalRow | null {
  const { rate } = rated;
  if (!rate) return null;
  return {
    kind,
    name: `${name} ${percent(rated)}`,
    words: `${countWords(rated)} · ${rateSpan(rated)}`,
    value: 100 * rate.p,
    low: 100 * rate.low,
    high: 100 * rate.high,
  };
}

/** How the numbers were worked, for whoever wants to know. */
function Behind({ figures }: { readonly figures: Figures }) {
  const { relaxed, pressured, drop, simple, leftOut } = figures;
  const left = leftOut.relaxed + leftOut.pressured;
  return (
    <details className="behind">
      <summary>How the bare counts are compared, and the numbers</summary>
      <FiguresTable
        label="As shot, in numbers"
        heads={['As shot', 'Made', 'Share', 'Span']}
        rows={[
          { name: 'Relaxed', cells: rateCells(relaxed) },
          { name: 'Pressured', cells: rateCells(pressured) },
          ...(drop
            ? [{ name: 'Drop, matched by spot', cells: ['', pointsWords(drop.points), dropSpan(drop)] }]
            : []),
        ]}
      />
      <ul>
        <li>
          Each spot and kind of shot is compared with itself, relaxed against pressured; only then are the
          spots put together. The span of the drop holds the truth nine times in ten, if your good and bad
          days even out.
        </li>
        {drop && left > 0 ? <li>{leftOutWords(leftOut)}</li> : null}
        {simple ? (
          <li>
            All shots thrown together, whatever the spot: {pointsWords(simple.points)}, from{' '}
            {dropSpan(simple)} at {100 * SIMPLE_LEVEL} in 100.
          </li>
        ) : null}
      </ul>
    </details>
  );
}

function rateCells(rated: Rated): string[] {
  return [countWords(rated), percent(rated), rateSpan(rated)];
}

function leftOutWords({ relaxed, pressured }: Figures['leftOut']): string {
  const shots = [
    relaxed > 0 ? `${relaxed} relaxed` : '',
    pressured > 0 ? `${pressured} pressured` : '',
  ].filter((part) => part !== '');
  return `Left out of the drop: ${shots.join(' and ')} shots from spots, or of a kind, that you took only one way.`;
}
