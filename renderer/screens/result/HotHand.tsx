import { IntervalChart } from '../../charts/IntervalChart.tsx';
import type { AfterMake, AfterMakeSplit } from '../../stats/afterMake.ts';
import { dropSpan, percent, pointsWords } from '../numberWords.ts';
import { Fold } from './Fold.tsx';
import { aroundNone } from './aroundNone.ts';

/** With fewer shots that follow another, the span is wider than any such help could be. Our own choice. */
const LEAST_SHOTS = 400;

/** Whether a make helps the next shot, relaxed and under pressure, for a shooter who notes single shots. */
export function HotHand({ split }: { readonly split: AfterMake }) {
  const shown = (['relaxed', 'pressured'] as const).flatMap((condition) => {
    const of = split[condition];
    return of && of.afterMake.attempts + of.afterMiss.attempts >= LEAST_SHOTS ? [{ condition, ...of }] : [];
  });
  if (shown.length === 0) return null;
  return (
    <Fold title="Does a make help the next shot?" says={shown.map(sentence).join(' ')}>
      <IntervalChart
        label={shown.map((one) => `${name(one)} ${pointsWords(one.corrected)}, ${dropSpan(one)}.`).join(' ')}
        rows={shown.map((one) => ({
          kind: one.condition,
          name: `${name(one)} ${pointsWords(one.corrected)}`,
          words: dropSpan(one),
          value: one.corrected,
          low: one.low,
          high: one.high,
        }))}
        axis={aroundNone(shown, ['worse after a make', 'better'])}
      />
      <details className="behind">
        <summary>The numbers after a make and after a miss</summary>
        <div className="scroll" role="region" aria-label="Numbers after a make and after a miss" tabIndex={0}>
          <table className="figures">
            <thead>
              <tr>
                <th scope="col">Rounds</th>
                <th scope="col">After a make</th>
                <th scope="col">After a miss</th>
                <th scope="col">Difference as it stands</th>
                <th scope="col">What the make changes</th>
              </tr>
            </thead>
            <tbody>
              {shown.map((one) => (
                <tr key={one.condition}>
                  <th scope="row">{name(one)}</th>
                  <td>{rate(one.afterMake)}</td>
                  <td>{rate(one.afterMiss)}</td>
                  <td>{pointsWords(one.points)}</td>
                  <td>
                    {pointsWords(one.corrected)}
                    <br />
                    <span className="quiet">{dropSpan(one)}</span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <p className="quiet">
          In short rows of shots makes thin out after a make by arithmetic alone, and an easy spot makes a
          make follow a make. Both are taken out, the first as Miller and Sanjurjo showed (Econometrica,
          2018).
        </p>
      </details>
    </Fold>
  );
}

type Split = AfterMakeSplit & { readonly condition: 'relaxed' | 'pressured' };

function name({ condition }: Split): string {
  return condition === 'relaxed' ? 'Relaxed' : 'Pressured';
}

function sentence(split: Split): string {
  const { low, high, corrected } = split;
  if (low > 0) return `${name(split)}, it looks so: about ${pointsWords(corrected)} better after a make.`;
  if (high < 0)
    return `${name(split)}, rather the opposite: about ${pointsWords(-corrected)} worse right after a make.`;
  return `${name(split)}, no difference that can be told from luck.`;
}

function rate(tally: AfterMakeSplit['afterMake']): string {
  return `${tally.makes} of ${tally.attempts} (${percent(tally)})`;
}
