import { HIGHEST_LEVEL, levelOf, type UsualPressure } from '../../pressure/ingredients.ts';
import { at } from '../matrix.ts';
import { type ModelData, UNKNOWN_INGREDIENTS } from './modelData.ts';
import { UNKNOWN_DOSE } from './priors.ts';

/** Of all pressured shots of the data; ingredients by those where they are known. */
export function usualPressure({ cells, ingredients }: ModelData): UsualPressure {
  let [all, level, known] = [0, 0, 0];
  const on = ingredients.map(() => 0);
  for (let cell = 0; cell < cells.count; cell += 1) {
    if (cells.pressured[cell] === 0) continue;
    const attempts = at(cells.attempts, cell);
    all += attempts;
    level += attempts * at(cells.dose, cell);
    const mask = at(cells.mask, cell);
    if (mask === UNKNOWN_INGREDIENTS) continue;
    known += attempts;
    for (let bit = 0; bit < on.length; bit += 1) on[bit] = at(on, bit) + ((mask >> bit) & 1) * attempts;
  }
  return {
    dose: all === 0 ? UNKNOWN_DOSE : level / all,
    ingredients: Object.fromEntries(
      ingredients.map((one, bit) => [one, known === 0 ? 0 : at(on, bit) / known]),
    ),
  };
}

/**
 * For each ingredient what turning it on adds to the level, as a fraction of the highest: the mean over the pressured
 * shots, with the others as they were. A level that is at its highest does not rise.
 */
export function stepsOfDose({ cells, ingredients }: ModelData): number[] {
  let known = 0;
  const sums = ingredients.map(() => 0);
  for (let cell = 0; cell < cells.count; cell += 1) {
    const mask = at(cells.mask, cell);
    if (cells.pressured[cell] === 0 || mask === UNKNOWN_INGREDIENTS) continue;
    const attempts = at(cells.attempts, cell);
    known += attempts;
    for (let bit = 0; bit < sums.length; bit += 1) {
      const others = onIn(mask & ~(1 << bit));
      const step = (levelOf(others + 1) - levelOf(others)) / HIGHEST_LEVEL;
      sums[bit] = at(sums, bit) + attempts * step;
    }
  }
  return sums.map((sum) => (known === 0 ? 0 : sum / known));
}

/** How many ingredients are on. */
function onIn(mask: number): number {
  let count = 0;
  for (let rest = mask; rest > 0; rest >>= 1) count += rest & 1;
  return count;
}
