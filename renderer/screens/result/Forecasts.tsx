import { ForecastChart } from '../../charts/ForecastChart.tsx';
import { IntervalChart } from '../../charts/IntervalChart.tsx';
import type { ForecastScore, ScoredMarks, ScoredRound } from '../../stats/forecastScore.ts';
import { dayWords, shortDayWords } from '../dayWords.ts';
import { spanWords } from '../forecastWords.ts';
import { chanceWords } from '../numberWords.ts';
import { ConditionKey } from './ConditionKey.tsx';
import { Fold } from './Fold.tsx';
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
  const { rounds, marks, games } = score;
  const details = [plainGuessWords(score), leftOutWords(score)].filter((words) => words !== null);
  return (
    <Fold title="Do the forecasts keep their word?" says={calibrationWords(score)}>
      {rounds.length > 0 ? <RoundsForecast rounds={rounds} /> : null}
      {details.length > 0 ? <p>{details.join(' ')}</p> : null}
      {marks.length > 0 ? <MarksSaid classes={marks} what="mark" /> : null}
      {games.length > 0 ? <MarksSaid classes={games} what="game" /> : null}
    </Fold>
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

interface SaidProps {
  readonly classes: readonly ScoredMarks[];
  readonly what: 'mark' | 'game';
}

function MarksSaid({ classes, what }: SaidProps) {
  const inHundred = (count: number, of: number): number => (100 * count) / of;
  const [all, kept] = what === 'mark' ? ['Marks', 'beaten'] : ['Games', 'won'];
  return (
    <>
      <h4>
        {all}: said and {kept}
      </h4>
      <p>{marksWords(classes, what)}</p>
      <IntervalChart
        label={`${all} by the chance that was said; the table below holds the same.`}
        rows={classes.map((one) => ({
          kind: 'pressured',
          name: `Said: ${chanceWords(one.said)}`,
          words: `${one.beaten} of ${one.marks} ${kept}`,
          value: inHundred(one.beaten, one.marks),
          low: inHundred(one.low, one.marks),
          high: inHundred(one.high, one.marks),
        }))}
        axis={{ from: 0, to: 100, step: 25, write: String }}
      />
      <p className="quiet">
        In 100 {what}s. The bar is where the {kept} ones should lie four times in five, were the chances
        right; with few {what}s it is long. The diamond is what you {what === 'mark' ? 'beat' : 'won'}.
      </p>
      <details className="behind">
        <summary>The numbers by chance{what === 'game' ? ' of a game' : ''}</summary>
        <div className="scroll" role="region" aria-label={`${all} by chance`} tabIndex={0}>
          <table className="figures">
            <thead>
              <tr>
                <th scope="col">Said</th>
                <th scope="col">{all}</th>
                <th scope="col">{kept === 'won' ? 'Won' : 'Beaten'}</th>
                <th scope="col">To be expected</th>
              </tr>
            </thead>
            <tbody>
              {classes.map((one) => (
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
