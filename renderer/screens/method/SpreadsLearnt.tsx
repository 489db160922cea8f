import { NODES, SPREAD_SCALES, SPREADS } from '../../store/fixedNumbers.ts';
import { twoPlaces } from '../numberWords.ts';
import type { Index } from '../studyParts.ts';
import { Part } from './Part.tsx';
import { pointsAtHalf } from './pointsAtHalf.ts';

const WORDS: Readonly<Record<(typeof SPREADS)[number], string>> = {
  skill: 'How far your skill steps from one week to the next',
  day: 'How far a good or bad day lies from a usual one',
  week: 'How far a week’s own answer to pressure lies from your usual one',
  dayPressure: 'How far a day’s own answer to pressure lies from that of its week',
};

/** How much things vary, which is learnt too. */
export function SpreadsLearnt({ index }: { readonly index: Index | null }) {
  return (
    <Part title="How much things vary, learnt from your record">
      <p>
        Four sizes are not fixed but learnt (their trade name is hyperparameters). Each is the usual size of a
        step or of a difference; one time in three it is larger. In points they are given for a shooter at 50
        %. The answer is an average over {NODES} settings of the four, each counted by how well it fits.
      </p>
      <div className="scroll" role="region" aria-label="Sizes learnt" tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">Size</th>
              <th scope="col" className="number">
                Yours, points
              </th>
              <th scope="col" className="number">
                Yours, log-odds
              </th>
              <th scope="col" className="number">
                Expected below
              </th>
            </tr>
          </thead>
          <tbody>
            {SPREADS.map((name) => (
              <tr key={name}>
                <th scope="row">{WORDS[name]}</th>
                <td className="number">{index ? pointsAtHalf(index.hyper.mean[name]) : '–'}</td>
                <td className="number">
                  {index ? `${twoPlaces(index.hyper.mean[name])} ± ${twoPlaces(index.hyper.sd[name])}` : '–'}
                </td>
                <td className="number">{SPREAD_SCALES[name]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="quiet">
        “Expected below”: before the first shot, two shooters in three are taken to lie below this, in
        log-odds.
      </p>
    </Part>
  );
}
