import type { ReactNode } from 'react';

import type { Summary } from '../../stats/summary.ts';
import { countWords, dropSpan, pointsWords, rateSpan } from '../numberWords.ts';

interface Props {
  /** What opens the table. */
  readonly summary: string;
  /** What a reader of the screen hears for the scrolled region. */
  readonly label: string;
  /** What the first column holds. */
  readonly first: string;
  /** What a fifth column holds; without one there are four. */
  readonly last?: string;
  /** Rows, each a head, then relaxed, pressured and drop as {@link RateCells} writes them. */
  readonly children: ReactNode;
}

/** The table behind a chart: relaxed, pressured and drop, row by row. */
export function RateTable({ summary, label, first, last, children }: Props) {
  return (
    <details className="behind">
      <summary>{summary}</summary>
      <div className="scroll" role="region" aria-label={label} tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">{first}</th>
              <th scope="col">Relaxed</th>
              <th scope="col">Pressured</th>
              <th scope="col">Drop</th>
              {last === undefined ? null : <th scope="col">{last}</th>}
            </tr>
          </thead>
          <tbody>{children}</tbody>
        </table>
      </div>
    </details>
  );
}

/** Three cells of a table: relaxed, pressured, drop. */
export function RateCells({ summary: { relaxed, pressured, drop } }: { readonly summary: Summary }) {
  return (
    <>
      <td>
        {countWords(relaxed)}
        <br />
        <span className="quiet">{rateSpan(relaxed)}</span>
      </td>
      <td>
        {countWords(pressured)}
        <br />
        <span className="quiet">{rateSpan(pressured)}</span>
      </td>
      <td>
        {drop ? pointsWords(drop.points) : '–'}
        <br />
        <span className="quiet">{drop ? dropSpan(drop) : ''}</span>
      </td>
    </>
  );
}
