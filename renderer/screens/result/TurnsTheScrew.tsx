import { IntervalChart } from '../../charts/IntervalChart.tsx';
import type { Round } from '../../log/book.ts';
import type { ChokeIndex, IndexIngredient } from '../../stats/model/chokeIndex.ts';
import { chanceWords, dropSpan, pointsWords } from '../numberWords.ts';
import { INGREDIENT_WORDS } from '../parts/ingredientWords.ts';
import { upperFirst } from '../parts/upperFirst.ts';
import { screwWords } from './screwWords.ts';
import { aroundNone } from './aroundNone.ts';

interface Props {
  readonly index: ChokeIndex;
  readonly rounds: readonly Pick<Round, 'condition' | 'pressure'>[];
}

/** Which ingredient costs how much. */
export function TurnsTheScrew({ index: { ingredients }, rounds }: Props) {
  const { headline, cautions } = screwWords(ingredients, rounds);
  return (
    <section className="panel">
      <h2>What turns the screw</h2>
      <p className="lead">{headline}</p>
      {ingredients.length === 0 ? null : <Costs ingredients={ingredients} />}
      {cautions.map((words) => (
        <p key={words} className="quiet">
          {words}
        </p>
      ))}
      {ingredients.length === 0 ? null : <CostTable ingredients={ingredients} />}
    </section>
  );
}

interface PartProps {
  readonly ingredients: readonly IndexIngredient[];
}

function Costs({ ingredients }: PartProps) {
  return (
    <IntervalChart
      label={ingredients
        .map((one) => `${nameOf(one)} ${pointsWords(one.points)}, ${dropSpan(one)}.`)
        .join(' ')}
      rows={ingredients.map((one) => ({
        kind: 'drop',
        name: `${nameOf(one)} ${pointsWords(one.points)}`,
        words: `${dropSpan(one)} · ${one.shots.on} shots with, ${one.shots.off} without`,
        value: one.points,
        low: one.low,
        high: one.high,
      }))}
      axis={aroundNone(ingredients, ['it helps', 'it costs points'])}
    />
  );
}

function CostTable({ ingredients }: PartProps) {
  return (
    <details className="behind">
      <summary>The numbers by ingredient</summary>
      <div className="scroll" role="region" aria-label="Numbers by ingredient" tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">Ingredient</th>
              <th scope="col">Costs</th>
              <th scope="col" className="number">
                Shots with it
              </th>
              <th scope="col" className="number">
                Shots without
              </th>
              <th scope="col" className="number">
                Chance that it costs anything
              </th>
            </tr>
          </thead>
          <tbody>
            {ingredients.map((one) => (
              <tr key={one.ingredient}>
                <th scope="row">{nameOf(one)}</th>
                <td>
                  {pointsWords(one.points)}
                  <br />
                  <span className="quiet">{dropSpan(one)}</span>
                </td>
                <td className="number">{one.shots.on}</td>
                <td className="number">{one.shots.off}</td>
                <td className="number">{chanceWords(one.probability)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

function nameOf({ ingredient }: IndexIngredient): string {
  return upperFirst(INGREDIENT_WORDS[ingredient]);
}
