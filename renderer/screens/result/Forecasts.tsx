import { ForecastChart } from '../../charts/ForecastChart.tsx';
import { IntervalChart } from '../../charts/IntervalChart.tsx';
import type { ForecastScore, ScoredMarks, ScoredRound } from '../../stats/forecastScore.ts';
import { dayWords, shortDayWords } from '../dayWords.ts';
import { spanWords } from '../forecastWords.ts';
import { chanceWords } from '../numberWords.ts';
import { ConditionKey } from './ConditionKey.tsx';
import {
  calibrationWords,
  leftOutWords,
  marksWords,
  placeWords,
  plainGuessWords,
} from './forecastScoreWords.ts';

/** So many rounds are drawn; the table holds all that were looked at. */
const DRAWN = 30;

/** Whether what the app says before a round is to be believed. */
export function Forecasts({ score }: { readonly score: ForecastScore | null }) {
  if (!score) return null;
  const { rounds, marks } = score;
  const details = [plainGuessWords(score), leftOutWords(score)].filter((words) => words !== null);
  return (
    <section className="panel">
      <h2>Do the forecasts keep their word?</h2>
      <p className="lead">{calibrationWords(score)}</p>
      {rounds.length > 0 ? <RoundsForecast rounds={rounds} /> : null}
      {details.length > 0 ? <p>{details.join(' ')}</p> : null}
      {marks.length > 0 ? <MarksSaid marks={marks} /> : null}
    </section>
  );
}

function RoundsForecast({ rounds }: Pick<ForecastScore, 'rounds'>) {
  const drawn = rounds.slice(-DRAWN);
  return (
    <>
      <ConditionKey />
      <ForecastChart
        label="Forecast and result of the latest rounds; the table below holds the same."
        rounds={drawn}
        dayWords={shortDayWords}
      />
      <p className="quiet">
        The bar is what your record said before the round, worked out anew from the rounds before it: four
        rounds in five should end in it. The circle or diamond is what you made.
        {drawn.length < rounds.length ? ` Drawn are the latest ${drawn.length}.` : ''}
      </p>
      <details className="behind">
        <summary>The numbers round by round</summary>
        <div className="scroll" role="region" aria-label="Forecasts round by round" tabIndex={0}>
          <table className="figures">
            <thead>
              <tr>
                <th scope="col">Day</th>
                <th scope="col">Round</th>
                <th scope="col">Forecast</th>
                <th scope="col">Made</th>
                <th scope="col">Ended</th>
              </tr>
            </thead>
            <tbody>
              {rounds.toReversed().map((round) => (
                <RoundRow key={round.round} round={round} />
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </>
  );
}

function RoundRow({ round }: { readonly round: ScoredRound }) {
  const { date, condition, attempts, mean, makes } = round;
  return (
    <tr>
      <th scope="row">{dayWords(date)}</th>
      <td>
        {condition}, {attempts} shots
      </td>
      <td>
        {spanWords(round)}
        <br />
        <span className="quiet">about {Math.round(mean)}</span>
      </td>
      <td>{makes}</td>
      <td>{placeWords(round)}</td>
    </tr>
  );
}

function MarksSaid({ marks }: Pick<ForecastScore, 'marks'>) {
  const inHundred = (count: number, of: number): number => (100 * count) / of;
  return (
    <>
      <h3>Marks: said and beaten</h3>
      <p>{marksWords(marks)}</p>
      <IntervalChart
        label="Marks by the chance that was said; the table below holds the same."
        rows={marks.map((one) => ({
          kind: 'pressured',
          name: `Said: ${chanceWords(one.said)}`,
          words: `${one.beaten} of ${one.marks} beaten`,
          value: inHundred(one.beaten, one.marks),
          low: inHundred(one.low, one.marks),
          high: inHundred(one.high, one.marks),
        }))}
        axis={{ from: 0, to: 100, step: 25, write: String }}
      />
      <p className="quiet">
        In 100 marks. The bar is where the beaten ones should lie four times in five, were the chances right;
        with few marks it is long. The diamond is what you beat.
      </p>
      <details className="behind">
        <summary>The numbers by chance</summary>
        <div className="scroll" role="region" aria-label="Marks by chance" tabIndex={0}>
          <table className="figures">
            <thead>
              <tr>
                <th scope="col">Said</th>
                <th scope="col">Marks</th>
                <th scope="col">Beaten</th>
                <th scope="col">To be expected</th>
              </tr>
            </thead>
            <tbody>
              {marks.map((one) => (
                <MarksRow key={one.said} one={one} />
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </>
  );
}

function MarksRow({ one }: { readonly one: ScoredMarks }) {
  return (
    <tr>
      <th scope="row">{chanceWords(one.said)}</th>
      <td>{one.marks}</td>
      <td>{one.beaten}</td>
      <td>
        about {Math.round(one.said * one.marks)}
        <br />
        <span className="quiet">{spanWords(one)}</span>
      </td>
    </tr>
  );
}
