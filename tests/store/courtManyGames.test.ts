import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { gameOn } from '../../renderer/games/gameOn.ts';
import { roundTally } from '../../renderer/log/roundCells.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { shooterFigures } from '../../renderer/store/figures.ts';
import { startRound } from '../../renderer/store/roundActions.ts';
import { SMALL_CARD } from '../games/plans.ts';
import { beforeRound, evening } from '../tools/evening.ts';
import { playOut } from '../tools/playOut.ts';

/*
 * Games that stop early stop after what was shot: rounds that went badly are short. What a shooter makes is told by the
 * sums over all of them; the mean of the rounds' percentages is wrong, and here by how much.
 */

const RATE = 0.5;
const ROUNDS = 250;

/** Many games of one plan in one evening, through the app's store, at a true make rate of one half. */
async function play(plan: GamePlan) {
  const night = await evening(beforeRound().slice(0, 2));
  const rng = rngFromSeed(17);
  for (let round = 0; round < ROUNDS; round += 1) {
    await startRound(night.gym, {
      shooter: 'ines',
      condition: 'pressured',
      card: { id: 'small', name: 'A small card', stops: SMALL_CARD },
      entry: 'each-shot',
      nerves: null,
      pressure: {
        ingredients: ['must-make'],
        stake: null,
        mark: null,
        game: { name: 'A game', plan, chance: null },
        clock: null,
        crowd: false,
        showChance: false,
        seed: round,
      },
      pair: null,
    });
    await playOut(night, rng, RATE);
  }
  const { book } = night.gym.store.getState();
  const rounds = [...book.rounds.values()];
  const shares = rounds.map((round) => {
    const { makes, attempts } = roundTally(round);
    return makes / attempts;
  });
  return {
    figures: shooterFigures(book, 'ines').pressured,
    meanShare: shares.reduce((sum, share) => sum + share, 0) / ROUNDS,
    won: rounds.filter((round) => gameOn(round)?.won).length / ROUNDS,
  };
}

/** Four standard errors of a share over so many trials. */
const fourErrors = (trials: number): number => 4 * Math.sqrt((RATE * (1 - RATE)) / trials);

describe('many games that stop early', () => {
  it('of lives: the sums tell the true rate, which the mean of percentages misses by eight points', async () => {
    const { figures, meanShare } = await play({ family: 'lives', needed: 60, lives: 3 });
    expect(figures.attempts).toBeGreaterThan(1000);
    expect(Math.abs(figures.makes / figures.attempts - RATE)).toBeLessThan(fourErrors(figures.attempts));
    // E[m / (m + 3)] for m makes before the third miss, m ~ negative binomial: 0.4206 at one half.
    let exact = 0;
    for (let m = 0; m < 60; m += 1) exact += (((m + 1) * (m + 2)) / 2) * RATE ** (m + 3) * (m / (m + 3));
    expect(exact).toBeCloseTo(0.4206, 4);
    expect(Math.abs(meanShare - exact)).toBeLessThan(0.06);
    expect(meanShare).toBeLessThan(RATE - 0.03);
  });
  it('of a streak: the sums tell the true rate, and it is won as often as the rule says', async () => {
    const { figures, won } = await play({ family: 'streak', row: 2, most: 4 });
    expect(Math.abs(figures.makes / figures.attempts - RATE)).toBeLessThan(fourErrors(figures.attempts));
    // Eight of the sixteen ways four shots can fall have two makes in a row.
    expect(Math.abs(won - 8 / 16)).toBeLessThan(fourErrors(ROUNDS));
  });
});
