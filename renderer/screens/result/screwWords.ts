import type { Round } from '../../log/book.ts';
import { INGREDIENTS, type Ingredient } from '../../pressure/ingredients.ts';
import type { IndexIngredient } from '../../stats/model/chokeIndex.ts';
import { LIKELY, SURE_ENOUGH } from '../../store/fixedNumbers.ts';
import { endWords, pointsWords } from '../numberWords.ts';
import { INGREDIENT_WORDS, ingredientList } from '../parts/ingredientWords.ts';
import { upperFirst } from '../parts/upperFirst.ts';

/** What is said about the ingredients: the sentence, and the cautions that go with it. */
export interface ScrewWords {
  readonly headline: string;
  readonly cautions: readonly string[];
}

/** A span longer than this many points can hold a lot of luck. */
const WIDE = 8;

/**
 * @param ingredients dearest first, as the index has them
 * @param rounds the shooter's rounds
 */
export function screwWords(
  ingredients: readonly IndexIngredient[],
  rounds: readonly Pick<Round, 'condition' | 'pressure'>[],
): ScrewWords {
  const [dearest] = ingredients;
  if (!dearest) return { headline: noneWords(rounds), cautions: [] };
  const wide = ingredients.some(({ low, high }) => high - low > WIDE);
  const always = alwaysOn(rounds).filter((one) => ingredients.every(({ ingredient }) => ingredient !== one));
  return {
    headline: dearestWords(dearest),
    cautions: [
      wide
        ? 'The bars are long: so far too few rounds were shot with and without each of these. Until there are more, every figure is also pulled towards 0.'
        : '',
      'Only pressured rounds are compared. If one of these is on just when you feel good or bad, it gets the credit or the blame for that: change one thing at a time, whatever the day.',
      always.length > 0
        ? `In every pressured round so far: ${ingredientList(always)}. Leave one out now and then, and it can be told what it costs.`
        : '',
    ].filter((words) => words !== ''),
  };
}

function dearestWords({ ingredient, points, low, high, probability, dearest }: IndexIngredient): string {
  const name = upperFirst(INGREDIENT_WORDS[ingredient]);
  const about = `about ${pointsWords(points)}`;
  if (Math.round(points) <= 0) return 'None of these costs you anything that can be told so far.';
  if (probability > LIKELY) {
    const [from, to] = endWords(low, high);
    const floor = Math.round(low) > 0 ? from : 'just above 0';
    const most = dearest > SURE_ENOUGH ? 'costs you most' : 'costs you something';
    return `${name} ${most}: ${about}, somewhere between ${floor} and ${to}.`;
  }
  const helps = Math.round(-low) > 0 ? `help by ${pointsWords(-low)}` : 'cost nothing';
  return `${name} looks dearest so far, ${about}. That may be luck: it could as well ${helps} as cost ${Math.round(high)}.`;
}

function noneWords(rounds: readonly Pick<Round, 'condition' | 'pressure'>[]): string {
  const always = alwaysOn(rounds);
  if (always.length > 0) {
    return `Every pressured round so far had the same ingredients: ${ingredientList(always)}. Leave one out now and then, and it can be told what it costs.`;
  }
  if (rounds.some(({ pressure }) => pressure !== null)) {
    return 'No pressured round so far had anything that turns the screw. Turn one thing on now and then, and it can be told what it costs.';
  }
  return 'Your pressured rounds come from files, and files do not say what turned the pressure on. Rounds shot with the app do.';
}

/** On in every pressured round that was set up here; rounds from files do not say. */
function alwaysOn(rounds: readonly Pick<Round, 'condition' | 'pressure'>[]): Ingredient[] {
  const setups = rounds.flatMap(({ condition, pressure }) =>
    condition === 'pressured' && pressure ? [pressure.ingredients] : [],
  );
  if (setups.length === 0) return [];
  return INGREDIENTS.filter((one) => setups.every((on) => on.includes(one)));
}
