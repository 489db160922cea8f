import type { Seconds } from '../../basics/units.ts';
import type { Length } from '../../games/length.ts';
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

/** `You win this about 46 times in 100.` */
export function chanceSentence({ chance, inTime }: Price): string {
  const often = `about ${inHundred(chance)} times in 100`;
  if (chance < 0.005) return `You would hardly ever win this${inTime ? ' in that time' : ''}.`;
  if (chance > 0.995) return 'You would hardly ever lose this.';
  return `You win this ${often}.`;
}

/** How long it takes: `42 shots on average, one time in ten over 85.` */
export function lengthSentence(length: Length, plan: GamePlan): string {
  // In a duel the shooter's own shots are every other one.
  const own = (turns: number): number => (plan.family === 'duel' ? Math.ceil(turns / 2) : turns);
  const mean = Math.max(1, Math.round(plan.family === 'duel' ? length.mean / 2 : length.mean));
  const [ninetieth, most] = [own(length.ninetieth), own(length.most)];
  const average = `${shots(mean)} on average`;
  if (length.most - length.mean < 0.05) return `Always ${shots(most)}.`;
  if (ninetieth >= most) return `${average}, ${most} at most.`;
  return `${average}, one time in ten over ${ninetieth}.`;
}

/** What the clock does to it; null where no clock can end it. */
export function timeSentence({ inTime, length }: Price): string | null {
  if (inTime === null) return null;
  const { pace, enough } = inTime;
  const whose = pace.own ? 'your pace' : 'a usual pace';
  return `At ${whose} of ${secondsWords(pace.seconds)} a shot about ${shots(Math.round(length.mean))} ${
    Math.round(length.mean) === 1 ? 'gets' : 'get'
  } away in time. With time enough you would win about ${inHundred(enough)} times in 100.`;
}

/** A game's chance and length in one go, as the list says them. */
export function priceWords(price: Price, plan: GamePlan): string {
  return [chanceSentence(price), lengthSentence(price.length, plan)].join(' ');
}

/** What a last shot's clock says about the rules. */
export function lastShotSentence(rules: RuleSet): string {
  const edge = CATCH_AND_SHOOT[rules];
  return `Under ${rules} rules a catch and a shot need ${edge} s on the clock; with less only a tap can score.`;
}

function secondsWords(seconds: Seconds): string {
  return seconds < 9.95 ? `${seconds.toFixed(1)} s` : `${Math.round(seconds)} s`;
}

function shots(count: number): string {
  return count === 1 ? '1 shot' : `${count} shots`;
}
