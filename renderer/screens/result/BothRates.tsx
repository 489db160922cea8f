import { IntervalChart, type IntervalRow } from '../../charts/IntervalChart.tsx';
import { reachOf } from '../../charts/scale.ts';
import type { Rated } from '../../stats/summary.ts';
import { SIMPLE_LEVEL, type Figures } from '../../store/figures.ts';
import { countWords, dropSpan, percent, pointsWords, rateSpan, signed } from '../numberWords.ts';

/** Relaxed and pressured side by side, and what lies between them. */
export function BothRates({ figures }: { readonly figures: Figures }) {
  const { relaxed, pressured, drop } = figures;
  const rows = [rateRow('relaxed', 'Relaxed', relaxed), rateRow('pressured', 'Pressured', pressured)];
  return (
    <section className="panel">
      <h2>Relaxed and pressured side by side</h2>
      <IntervalChart
        label={`Relaxed ${countWords(relaxed)}, ${rateSpan(relaxed)}. Pressured ${countWords(pressured)}, ${rateSpan(pressured)}.`}
        rows={rows.filter((row) => row !== null)}
        axis={{ from: 0, to: 100, step: 25, write: (value) => `${value} %` }}
      />
      {drop ? (
        <DropChart figures={figures} />
      ) : (
        <p className="quiet">The drop between them can be told once one spot was shot both ways.</p>
      )}
      <Behind figures={figures} />
    </section>
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

function DropChart({ figures: { drop } }: { readonly figures: Pick<Figures, 'drop'> }) {
  if (!drop) return null;
  const { points, low, high } = drop;
  const reach = reachOf([low, high]);
  return (
    <IntervalChart
      label={`Drop ${pointsWords(points)}, from ${dropSpan(drop)}.`}
      rows={[
        {
          kind: 'drop',
          name: `Drop ${pointsWords(points)}`,
          words: dropSpan(drop),
          value: points,
          low,
          high,
        },
      ]}
      axis={{
        from: -reach,
        to: reach,
        step: reach / 2,
        write: signed,
        sides: ['better under pressure', 'worse'],
      }}
    />
  );
}

/** How the numbers were worked, for whoever wants to know. */
function Behind({ figures }: { readonly figures: Figures }) {
  const { drop, simple, leftOut, nerves } = figures;
  const left = leftOut.relaxed + leftOut.pressured;
  return (
    <details className="behind">
      <summary>How this was worked out</summary>
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
        {nerves.compared > 0 ? <li>{nervesWords(nerves)}</li> : null}
        <li>Practice pressure is not a game. It shows what this kind of pressure does to you.</li>
      </ul>
    </details>
  );
}

function leftOutWords({ relaxed, pressured }: Figures['leftOut']): string {
  const shots = [
    relaxed > 0 ? `${relaxed} relaxed` : '',
    pressured > 0 ? `${pressured} pressured` : '',
  ].filter((part) => part !== '');
  return `Left out of the drop: ${shots.join(' and ')} shots from spots, or of a kind, that you took only one way.`;
}

function nervesWords({ compared, unfelt }: Figures['nerves']): string {
  const rounds = compared === 1 ? 'the one pressured round' : `all ${compared} pressured rounds`;
  if (unfelt.size === 0) return `Your nerves rose in ${rounds} that can be compared with a relaxed one.`;
  return (
    `In ${unfelt.size} of ${compared} pressured rounds you rated your nerves no higher than in the relaxed ones of that ` +
    'session, so perhaps no pressure was felt. They are counted, and marked in the list of rounds.'
  );
}
