import type { Probability, Seconds } from '../../basics/units.ts';
import type { GameFamily, GamePlan } from '../../pressure/gamePlan.ts';
import { inHundred } from '../../store/forecast.ts';
import type { Price } from '../../store/gamePrices.ts';
import { CATCH_AND_SHOOT, type RuleSet } from '../../court/ruleSets.ts';

/* What is said of a game before it: what kind it is, how likely it is won, how long it takes. */

export const FAMILY_WORDS: Readonly<Record<GameFamily, { readonly name: string; readonly words: string }>> = {
  reach: { name: 'So many makes', words: 'A card of shots, and so many of them have to go in.' },
  streak: { name: 'In a row', words: 'Shoot until so many in a row go in, or the shots run out.' },
  lives: { name: 'Lives', words: 'So many makes before so many misses.' },
  race: { name: 'Race to a score', words: 'A make is points up, a miss may be points down.' },
  trips: { name: 'Trips to the line', words: 'Free throws as the end of a game brings them.' },
  racks: { name: 'Racks', words: 'Racks of balls, some of them worth double, against the clock.' },
  'last shot': {
    name: 'Last shots',
    words: 'One shot at a time from a clock that never starts at the same moment twice.',
  },
  climb: { name: 'Climb', words: 'Step by step; falling short costs steps.' },
  duel: { name: 'Duel', words: 'Shot for shot against somebody.' },
};

/** The families, in the order of the list. */
export const FAMILIES = Object.keys(FAMILY_WORDS) as readonly GameFamily[];

/** The chance as a figure: `46`; nobody's chance is 0 or 100. */
export function chanceFigure(chance: Probability): string {
  if (chance < 0.005) return '<1';
  return chance > 0.995 ? '>99' : String(inHundred(chance));
}

/** `You win this about 46 times in 100.` */
export function chanceSentence({ chance, inTime }: Price): string {
  if (chance < 0.005) return `You would hardly ever win this${inTime ? ' in that time' : ''}.`;
  if (chance > 0.995) return 'You would hardly ever lose this.';
  return `You win this about ${timesInHundred(chance)}.`;
}

function timesInHundred(chance: Probability): string {
  const times = inHundred(chance);
  return times === 1 ? 'once in 100' : `${times} times in 100`;
}

/** How long it takes at the shooter's rate: `42 shots on average, one time in ten over 85.` */
export function lengthSentence({ length, inTime }: Price, plan: GamePlan): string {
  const own = ownShots(plan);
  const [mean, most] = [shotsOf(own(length.mean)), Math.ceil(own(length.most))];
  if (inTime && inTime.enough.length.mean - length.mean > 0.5) return timedLength({ length, inTime }, plan);
  if (length.most - length.mean < 0.05) return `Always ${mean}.`;
  const ninetieth = Math.ceil(own(length.ninetieth));
  return ninetieth >= most
    ? `${mean} on average, ${most} at most.`
    : `${mean} on average, one time in ten over ${ninetieth}.`;
}

/** Where the clock cuts the game short. */
function timedLength({ length, inTime }: Pick<Price, 'length' | 'inTime'>, plan: GamePlan): string {
  if (!inTime) return '';
  const own = ownShots(plan);
  const whole = Math.round(own(inTime.enough.length.mean));
  const whose = inTime.pace.own ? 'your pace' : 'a usual pace';
  return `At ${whose} of ${secondsWords(inTime.pace.seconds)} a shot time is left for about ${Math.round(
    own(length.mean),
  )} of ${shotsOf(whole)}; with time enough you would win about ${timesInHundred(inTime.enough.chance)}.`;
}

/** In a duel every other turn is the shooter's own. */
function ownShots({ family }: GamePlan): (turns: number) => number {
  return (turns) => (family === 'duel' ? turns / 2 : turns);
}

/** A game's chance and length in one go. */
export function priceWords(price: Price, plan: GamePlan): string {
  return `${chanceSentence(price)} ${lengthSentence(price, plan)}`;
}

/** What a last shot's clock says about the rules. */
export function lastShotSentence(rules: RuleSet): string {
  const edge = CATCH_AND_SHOOT[rules];
  return `Under ${rules} rules a catch and a shot need ${edge} s on the clock; with less only a tap can score.`;
}

function secondsWords(seconds: Seconds): string {
  return `${Math.round(seconds)} s`;
}

function shotsOf(mean: number): string {
  const shots = Math.max(1, Math.round(mean));
  return shots === 1 ? '1 shot' : `${shots} shots`;
}
