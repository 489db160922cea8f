import { useState } from 'react';

import { rngFromSeed } from '../../basics/chance.ts';
import type { Probability } from '../../basics/units.ts';
import { CourseChart, type CoursePoint } from '../../charts/CourseChart.tsx';
import { simulateGame, type Course } from '../../games/simulateGame.ts';
import type { GamePrices, Priceable } from '../../store/gamePrices.ts';
import { useDoors } from '../gymContext.ts';
import { chanceWords } from '../numberWords.ts';
import { Choice } from '../parts/Choice.tsx';
import { coursePoints, courseEnd, courseTurn } from './courseWords.ts';

interface Props {
  /** A game that can be played. */
  readonly game: Priceable;
  readonly prices: GamePrices;
}

const STRENGTHS: readonly { value: string; words: string; rate: Probability | undefined }[] = [
  { value: 'own', words: 'You, at your rate', rate: undefined },
  { value: '30', words: '30 in 100', rate: 0.3 },
  { value: '50', words: '50 in 100', rate: 0.5 },
  { value: '70', words: '70 in 100', rate: 0.7 },
  { value: '90', words: '90 in 100', rate: 0.9 },
];

interface Played {
  readonly course: Course;
  readonly start: Probability;
  readonly points: readonly CoursePoint[];
}

/** Plays the game in a moment, with the dice, and shows how it went. */
export function PlayOnce({ game, prices }: Props) {
  const { gym } = useDoors();
  const [strength, setStrength] = useState('own');
  const [played, setPlayed] = useState<Played | null>(null);
  const play = () => {
    const seed = gym.newSeed();
    const rate = STRENGTHS.find(({ value }) => value === strength)?.rate;
    const worked = prices.workOut(game, seed, rate);
    const course = simulateGame(worked, rngFromSeed(seed));
    setPlayed({
      course,
      start: worked.solved.standing([]).chance,
      points: coursePoints(course, game.plan),
    });
  };
  return (
    <section className="panel" aria-labelledby="play-once">
      <h2 id="play-once">Try it without a ball</h2>
      <Choice
        question="Who shoots?"
        hint="The app draws every shot. Nothing of it goes on your record."
        answers={STRENGTHS}
        value={strength}
        onChoose={setStrength}
      />
      <button type="button" className="button main" onClick={play}>
        {played ? 'Play it once more' : 'Play it once now'}
      </button>
      <div role="status">
        {played ? <p className="lead">{courseEnd(played.course, played.points.length)}</p> : null}
        {played ? <p>{courseTurn(played.points)}</p> : null}
      </div>
      {played && played.points.length > 0 ? <CourseShown {...played} /> : null}
    </section>
  );
}

function CourseShown({ start, points }: Played) {
  return (
    <>
      <CourseChart
        label={`The chance of winning after each of ${points.length} shots, and what hung on each. The table below holds the same.`}
        start={start}
        points={points}
      />
      <p className="quiet">A filled disc is a make, an open ring a miss.</p>
      <details className="behind">
        <summary>Shot by shot</summary>
        <div className="scroll" role="region" aria-label="Shot by shot" tabIndex={0}>
          <table className="figures">
            <thead>
              <tr>
                <th scope="col">Shot</th>
                <th scope="col">Went</th>
                <th scope="col">Wins after it</th>
                <th scope="col">Hung on it</th>
              </tr>
            </thead>
            <tbody>
              {points.map(({ made, after, leverage }, at) => (
                // Shots have no name of their own: their place is what they are.
                // oxlint-disable-next-line react/no-array-index-key
                <tr key={at}>
                  <th scope="row">{at + 1}</th>
                  <td>{made ? 'in' : 'out'}</td>
                  <td>{after === 0 ? 'lost' : after === 1 ? 'won' : chanceWords(after)}</td>
                  <td>{Math.round(100 * leverage)} points</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </>
  );
}
