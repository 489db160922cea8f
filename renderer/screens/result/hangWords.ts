import type { DoubleBallDrop } from '../../stats/doubleBall.ts';
import type { LeverageDrop } from '../../stats/leverage.ts';
import { CLEAR, LEAST_DOUBLES, LEAST_LEVERAGE, LIKELY } from '../../store/fixedNumbers.ts';
import type { WhatHangs } from '../../store/whatHangs.ts';
import { casesWords, pointsWords } from '../numberWords.ts';

/* What the shot loses when much hangs on it, in words. */

/** The sentence on all pressured shots; what is missing for it, where there are too few. */
export function leverageWords({ shots, rounds, drop }: WhatHangs['leverage']): string {
  if (!drop) return missingWords(shots, rounds);
  const { mostAgainstLeast, probability } = drop;
  const { points } = mostAgainstLeast;
  const than = 'when much hangs on the shot than when little does';
  if (probability > LIKELY && points >= 0.5) {
    return `You are about ${pointsWords(points)} worse ${than}. That is ${sureWords(probability)}.`;
  }
  if (probability < 1 - LIKELY && points <= -0.5) {
    return `You are about ${pointsWords(-points)} better ${than}. That is ${sureWords(1 - probability)}.`;
  }
  return 'Whether much or little hangs on the shot: no difference that can be told from luck.';
}

function sureWords(chance: number): string {
  return chance > CLEAR ? 'quite sure' : 'likely, not yet sure';
}

function missingWords(shots: number, rounds: number): string {
  if (shots >= LEAST_LEVERAGE.shots && rounds >= LEAST_LEVERAGE.rounds) {
    return 'The same hung on every shot so far, so there is nothing to compare.';
  }
  return `Too early to say. It takes ${LEAST_LEVERAGE.shots} shots, tapped one by one, in ${LEAST_LEVERAGE.rounds} pressured rounds with a mark or a game; so far there are ${shots} in ${rounds}.`;
}

/** How much “much” is. */
export function muchWords({ least, most }: LeverageDrop): string {
  return `What hangs on a shot is what a make instead of a miss does to your chance to win. On the third of your shots with least it was ${inHundred(least)} in 100, on the third with most ${inHundred(most)} in 100.`;
}

function inHundred(leverage: number): string {
  return leverage < 0.005 ? 'under 1' : String(Math.round(100 * leverage));
}

/** The sentence on double balls drawn by coin; null while there is none. */
export function doublesWords({ doubles, drop }: WhatHangs['doubles']): string | null {
  if (doubles === 0) return null;
  if (!drop) {
    return doubles < LEAST_DOUBLES
      ? `Of double balls drawn by coin you shot ${doubles}; from ${LEAST_DOUBLES} on something is said of them.`
      : 'No place in the racks has had both single and double balls yet.';
  }
  const told = `If doubling did nothing, the coin alone would bring so large a difference in ${casesWords(drop.chance.either)}.`;
  return `${coinWords(drop)} ${told}`;
}

/** Above this the coin alone may well have brought it. */
const HARDLY_LUCK = 0.05;

function coinWords({ points, chance }: DoubleBallDrop): string {
  if (chance.either > HARDLY_LUCK || Math.abs(points) < 0.5) {
    return 'On double balls, drawn by coin, no difference that can be told from luck.';
  }
  return points > 0
    ? `On double balls, drawn by coin, you are about ${pointsWords(points)} worse than on single ones.`
    : `On double balls, drawn by coin, you are about ${pointsWords(-points)} better than on single ones.`;
}

/** What the first figure cannot tell, and which one can. */
export function hangCaution({ leverage, doubles }: WhatHangs): string {
  const free = 'nothing but chance made a ball double, so no tiredness, hurry or good day can pass for it';
  if (!leverage.drop) {
    return doubles.drop ? `This is a fair test: ${free}.` : '';
  }
  const describes =
    'The figure over all shots describes, and proves no cause: much hangs on a shot when a game is close and near its end, and then you may be tired or in a hurry too.';
  return doubles.drop
    ? `${describes} The double balls are a fair test: ${free}.`
    : `${describes} Double balls drawn by coin would be a fair test of it.`;
}

/** Spans longer than this many points call for more double balls. */
const WIDE = 10;

/** Whether more double balls would tell more. */
export function wantsDoubles({ doubles: { drop } }: WhatHangs): boolean {
  return drop === null || drop.high - drop.low > WIDE;
}
