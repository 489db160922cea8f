import { IntervalChart, type IntervalRow } from '../../charts/IntervalChart.tsx';
import type { DoubleBallDrop } from '../../stats/doubleBall.ts';
import type { DropEstimate } from '../../stats/drop.ts';
import type { LeverageDrop } from '../../stats/leverage.ts';
import { writeAddress } from '../../store/places.ts';
import type { WhatHangs } from '../../store/whatHangs.ts';
import { casesWords, chanceWords, dropSpan, pointsWords } from '../numberWords.ts';
import { doublesWords, hangCaution, leverageWords, muchWords, wantsDoubles } from './hangWords.ts';
import { aroundNone } from './aroundNone.ts';

/** Whether the shot suffers when much hangs on it: over all shots of marks and games, and where a coin decided. */
export function WhatHangsOnIt({ hangs }: { readonly hangs: WhatHangs | null }) {
  if (!hangs || hangs.leverage.shots + hangs.doubles.doubles === 0) return null;
  const { leverage, doubles } = hangs;
  const rows = [
    ...(leverage.drop
      ? [rowOf('Much against little', leverage.drop.mostAgainstLeast, shotsOf(leverage))]
      : []),
    ...(doubles.drop ? [rowOf('Double balls, drawn by coin', doubles.drop, ballsOf(doubles.drop))] : []),
  ];
  const words = [doublesWords(doubles), leverage.drop ? muchWords(leverage.drop) : null];
  const caution = hangCaution(hangs);
  return (
    <section className="panel">
      <h2>When much hangs on the shot</h2>
      <p className="lead">{leverageWords(leverage)}</p>
      {words.map((one) => (one === null ? null : <p key={one}>{one}</p>))}
      {rows.length > 0 ? <Lost rows={rows} /> : null}
      {caution === '' ? null : <p className="quiet">{caution}</p>}
      {wantsDoubles(hangs) ? (
        <div className="row">
          <p>
            To learn more, play racks with double balls by the coin: a rack round of 25 brings about five of
            them.
          </p>
          <a className="button" href={writeAddress('games')}>
            Games
          </a>
        </div>
      ) : null}
      {leverage.drop ? <LeverageTable drop={leverage.drop} /> : null}
      {doubles.drop ? <DoublesTable drop={doubles.drop} /> : null}
    </section>
  );
}

function rowOf(name: string, estimate: DropEstimate, shots: string): IntervalRow {
  const { points, low, high } = estimate;
  return {
    kind: 'drop',
    name: `${name}: ${pointsWords(points)}`,
    words: `${dropSpan(estimate)} · ${shots}`,
    value: points,
    low,
    high,
  };
}

function shotsOf({ shots, rounds }: Pick<LeverageDrop, 'shots' | 'rounds'>): string {
  return `${shots} shots in ${rounds} rounds`;
}

function ballsOf({ shots: { double, single } }: DoubleBallDrop): string {
  return `${double} double, ${single} single`;
}

function Lost({ rows }: { readonly rows: readonly IntervalRow[] }) {
  return (
    <IntervalChart
      label={rows.map(({ name, words }) => `${name}, ${words}.`).join(' ')}
      rows={rows}
      axis={aroundNone(rows, ['better', 'worse'])}
    />
  );
}

function LeverageTable({ drop }: { readonly drop: LeverageDrop }) {
  const { mostAgainstLeast, perSd, sd, probability } = drop;
  return (
    <details className="behind">
      <summary>The numbers by what hung on the shot</summary>
      <div className="scroll" role="region" aria-label="Numbers by what hung on the shot" tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">Compared</th>
              <th scope="col">Lost</th>
            </tr>
          </thead>
          <tbody>
            <Difference name="The third with most against the third with least" drop={mostAgainstLeast} />
            <Difference
              name={`For every ${Math.round(100 * sd)} in 100 more that hangs on it (a standard deviation)`}
              drop={perSd}
            />
            <tr>
              <th scope="row">Chance that anything is lost</th>
              <td>{chanceWords(probability)}</td>
            </tr>
            <tr>
              <th scope="row">Shots looked at</th>
              <td>{drop.shots}</td>
            </tr>
            <tr>
              <th scope="row">Rounds they come from</th>
              <td>{drop.rounds}</td>
            </tr>
          </tbody>
        </table>
      </div>
      <p className="quiet">
        Single shots of your latest pressured rounds with a mark or a game, while it was still open. Good and
        bad rounds, the place and the shot’s number in its round are reckoned with.
      </p>
    </details>
  );
}

function DoublesTable({ drop }: { readonly drop: DoubleBallDrop }) {
  const { rates, shots, together, chance } = drop;
  return (
    <details className="behind">
      <summary>The numbers of the double balls</summary>
      <div className="scroll" role="region" aria-label="Numbers of the double balls" tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">Balls</th>
              <th scope="col">Made, or lost</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">Single, {shots.single} balls</th>
              <td>{Math.round(100 * rates.single)} %</td>
            </tr>
            <tr>
              <th scope="row">Double, {shots.double} balls</th>
              <td>{Math.round(100 * rates.double)} %</td>
            </tr>
            <Difference name="Single minus double, like beside like" drop={drop} />
            <Difference name="The same, all balls thrown together" drop={together} />
            <tr>
              <th scope="row">By the coin alone: a difference so large</th>
              <td>{casesWords(chance.either)}</td>
            </tr>
            <tr>
              <th scope="row">By the coin alone: as few makes on doubles</th>
              <td>{casesWords(chance.worse)}</td>
            </tr>
          </tbody>
        </table>
      </div>
      <p className="quiet">
        Like beside like: balls from the same spot and the same place in the rack. The chances by the coin are
        exact, counted over every way in which it could have fallen.
      </p>
    </details>
  );
}

function Difference({ name, drop }: { readonly name: string; readonly drop: DropEstimate }) {
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>
        {pointsWords(drop.points)}
        <br />
        <span className="quiet">{dropSpan(drop)}</span>
      </td>
    </tr>
  );
}
