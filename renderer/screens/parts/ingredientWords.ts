import type { Ingredient } from '../../pressure/ingredients.ts';

/** What turns pressure on, as a shooter calls it. */
export const INGREDIENT_WORDS: Readonly<Record<Ingredient, string>> = {
  clock: 'the clock',
  crowd: 'the crowd noise',
  stake: 'something on the line',
  watchers: 'someone watching',
  'must-make': 'a mark to beat',
  opponent: 'an opponent',
  'cold-start': 'a cold start',
};

/** `the clock`, `the clock and a mark to beat`, `the clock, the crowd noise and a mark to beat` */
export function ingredientList(ingredients: readonly Ingredient[]): string {
  const words = ingredients.map((one) => INGREDIENT_WORDS[one]);
  const last = words.pop() ?? 'nothing';
  return words.length === 0 ? last : `${words.join(', ')} and ${last}`;
}
