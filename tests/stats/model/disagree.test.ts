import { describe, expect, it } from 'vitest';

import { type Rng, rngFromSeed } from '../../../renderer/basics/chance.ts';
import { disagree, pairResult, type PlayedPair } from '../../../renderer/stats/model/pairs.ts';

/*
 * How often pairs and a model that is exactly right are said to tell different stories, where someone looks after every
 * pair. Rounds of 10 shots at 50 %, no drop, so the model says 0.
 */

const SHOTS = 10;
const MOST_PAIRS = 96;

function pairOf(id: string, rng: Rng): PlayedPair {
  let difference = 0;
  for (let shot = 0; shot < SHOTS; shot += 1) difference += Number(rng.chance(0.5)) - Number(rng.chance(0.5));
  return { id, difference, attempts: SHOTS };
}

/** Whether one shooter is ever warned. */
function everWarned(rng: Rng, warns: typeof disagree): boolean {
  const played: PlayedPair[] = [];
  for (let n = 1; n <= MOST_PAIRS; n += 1) {
    played.push(pairOf(`${n}`, rng));
    if (warns(pairResult({ played, leftOut: [], stopped: [] }), 0)) return true;
  }
  return false;
}

function share(warns: typeof disagree, shooters = 300): number {
  const rng = rngFromSeed(41);
  let warned = 0;
  for (let shooter = 0; shooter < shooters; shooter += 1) if (everWarned(rng, warns)) warned += 1;
  return warned / shooters;
}

describe('the warning that pairs and model tell different stories', () => {
  it('reaches about one shooter in forty where there is nothing to warn of', () => {
    // Three standard errors of a share of 2.5 % are 2.7 points.
    expect(share(disagree)).toBeLessThan(0.052);
  });

  it('would reach a third of them with two standard errors from eight pairs on', () => {
    const hasty: typeof disagree = ({ n, mean, se }, model) =>
      n >= 8 && mean !== null && se !== null && Math.abs(mean - model) > 2 * se;
    expect(share(hasty)).toBeGreaterThan(0.25);
  });
});
