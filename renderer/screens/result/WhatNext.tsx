import { useState } from 'react';

import type { Outlook } from '../../stats/outlook.ts';
import type { PlanRow } from '../../stats/planTable.ts';
import { writeAddress } from '../../store/places.ts';
import type { Study } from '../../store/study.ts';
import { useGym } from '../gymContext.ts';
import { Choice } from '../parts/Choice.tsx';
import { adviceWords, aimWords, CAUTION_WORDS, hindsightWords, needWords, ORDER_WORDS } from './planWords.ts';

/** How much to shoot, and in what order, until a drop would show. */
export function WhatNext({ study }: { readonly study: Study }) {
  const { outlook } = study;
  const busy = useGym((state) => state.book.open !== null);
  const hindsight = hindsightWords(outlook.hindsight, study.have.sessions);
  return (
    <section className="panel">
      <h2>What to do next</h2>
      <p className="lead">{adviceWords(study).join(' ')}</p>
      {busy ? null : (
        <a className="button main" href={writeAddress('pair')}>
          Shoot a pair
        </a>
      )}
      {outlook.table.aims.map((aim) => (
        <p key={aim.points}>{aimWords(aim, outlook.habit)}</p>
      ))}
      {hindsight.length === 0 ? null : <p>{hindsight.join(' ')}</p>}
      <p className="quiet">
        “Most likely” is four times in five.
        {outlook.habit.assumed
          ? ' Your record is still short, so this takes three sessions a week with 50 relaxed shots each for granted.'
          : ` It goes by how you shot in your latest eight weeks: ${habitWords(outlook.habit)}.`}{' '}
        More than your body takes well is no plan: leave a day between hard ones, and stop when something
        hurts.
      </p>
      <PlanDetails table={outlook.table} />
    </section>
  );
}

function habitWords({ sessionsPerWeek, relaxedPerWeek, pressuredPerWeek }: Outlook['habit']): string {
  const sessions = Math.round(10 * sessionsPerWeek) / 10;
  return `about ${sessions} ${sessions === 1 ? 'session' : 'sessions'} a week, ${Math.round(relaxedPerWeek)} relaxed and ${Math.round(pressuredPerWeek)} pressured shots`;
}

/** The whole table: every order and span. */
function PlanDetails({ table }: Pick<Outlook, 'table'>) {
  const sizes = table.aims.map(({ points }) => String(points));
  const [size, setSize] = useState(sizes[0] ?? '');
  const rows = table.rows.filter(({ points }) => String(points) === size);
  const orders = [...new Set(rows.map(({ order }) => order))];
  const spans = [...new Set(rows.map(({ weeks }) => weeks))];
  return (
    <details className="behind">
      <summary>Pressured shots a week, by order and time</summary>
      {sizes.length > 1 ? (
        <Choice
          question="Until a drop of this many points would show"
          answers={sizes.map((value) => ({ value, words: value }))}
          value={size}
          onChoose={setSize}
        />
      ) : null}
      <div className="scroll" role="region" aria-label="Pressured shots a week" tabIndex={0}>
        <table className="figures">
          <caption>Until a drop of {size} points would show.</caption>
          <thead>
            <tr>
              <th scope="col">Order</th>
              {spans.map((weeks) => (
                <th key={weeks} scope="col">
                  in {weeks} weeks
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {orders.map((order) => (
              <OrderRow key={order} rows={rows.filter((row) => row.order === order)} />
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

function OrderRow({ rows }: { readonly rows: readonly PlanRow[] }) {
  const [first] = rows;
  if (!first) return null;
  return (
    <tr>
      <th scope="row">
        {ORDER_WORDS[first.order]}
        {first.caution ? (
          <>
            <br />
            <span className="quiet">{CAUTION_WORDS[first.caution]}</span>
          </>
        ) : null}
      </th>
      {rows.map((row) => (
        <td key={row.weeks}>{needWords(row)}</td>
      ))}
    </tr>
  );
}
