import { describe, expect, it } from 'vitest';

import { type Rng, rngFromSeed } from '../../renderer/basics/chance.ts';
import { present } from '../../renderer/basics/invariant.ts';
import type { Round } from '../../renderer/log/book.ts';
import { roundTally } from '../../renderer/log/roundCells.ts';
import { cellsOf } from '../../renderer/stats/drop.ts';
import { modelData } from '../../renderer/stats/model/modelData.ts';
import { proportion } from '../../renderer/stats/proportion.ts';
import { summaryOf } from '../../renderer/stats/summary.ts';
import { shooterFigures } from '../../renderer/store/figures.ts';
import { diary, INES, started } from '../log/diary.ts';

/*
 * Rounds that end with what was shot: their percentages must never be averaged. Makes and attempts, added up, are right
 * whatever ends a round (Wald's identity, E makes = p · E attempts). Figures of this project's own study.
 */

interface Game {
  readonly name: string;
  readonly over: (makes: number, row: number, taken: number) => boolean;
}

const THREE_LIVES: Game = {
  name: 'until the third miss',
  over: (makes, _, taken) => taken - makes === 3,
};
const STREAK: Game = {
  name: 'until five in a row, 25 shots at most',
  over: (_, row, taken) => row === 5 || taken === 25,
};

/** By adding up the chances of all ways to the end. */
function exactly({ over }: Game, p: number): { round: number; makes: number; attempts: number } {
  let states = new Map([['0 0', 1]]);
  let [round, makes, attempts] = [0, 0, 0];
  // A round of lives has no end of its own; beyond 500 shots there is less than 1e-70.
  for (let taken = 1; taken <= 500 && states.size > 0; taken += 1) {
    const next = new Map<string, number>();
    for (const [key, chance] of states) {
      const [made = 0, row = 0] = key.split(' ').map(Number);
      for (const [hit, share] of [
        [1, p * chance],
        [0, (1 - p) * chance],
      ] as const) {
        const now = [made + hit, hit === 1 ? row + 1 : 0] as const;
        if (over(...now, taken)) {
          round += (share * 100 * now[0]) / taken;
          makes += share * now[0];
          attempts += share * taken;
        } else {
          next.set(now.join(' '), (next.get(now.join(' ')) ?? 0) + share);
        }
      }
    }
    states = next;
  }
  return { round, makes, attempts };
}

const CASES = [
  [THREE_LIVES, 0.5, 42.06],
  [THREE_LIVES, 0.7, 62.38],
  [STREAK, 0.5, 53.38],
  [STREAK, 0.6, 65.17],
] as const;

describe('the mean of round percentages', () => {
  it.each(CASES)('of rounds $name at $1 is not the make rate', (game, p, percent) => {
    const { round, makes, attempts } = exactly(game, p);
    expect(round).toBeCloseTo(percent, 2);
    expect(makes / attempts).toBeCloseTo(p, 10);
  });
});

/** Rounds of a game as they come out of the log. */
function logOf({ over }: Game, p: number, rounds: number, rng: Rng) {
  const log = diary();
  log.write('ShooterAdded', INES);
  log.write('SessionStarted', { session: 'visit 1', shooter: 'ines', date: '2026-11-25' });
  for (let at = 0; at < rounds; at += 1) {
    const round = `round ${at}`;
    const stops = [{ spot: 'free-throw', shot: 'free-throw', attempts: 200 }] as const;
    log.write(
      'RoundStarted',
      started({ round, first: null, card: { id: 'small', name: 'A game', stops: [...stops] } }),
    );
    for (let taken = 1, makes = 0, row = 0, end = false; !end; taken += 1) {
      const made = rng.chance(p);
      makes += made ? 1 : 0;
      row = made ? row + 1 : 0;
      log.write('ShotTaken', { round, stop: 0, made, side: null });
      end = over(makes, row, taken);
    }
    log.write('RoundEnded', { round, why: 'stopped', clockLeft: null });
  }
  return log.book();
}

describe('rounds that end with what was shot, from the log to the figures', () => {
  it.each(CASES)('$name at $1', (game, p, percent) => {
    const book = logOf(game, p, 1500, rngFromSeed(61));
    const rounds: Round[] = [...book.rounds.values()];
    expect(rounds).toHaveLength(1500);

    // Averaging them goes wrong, as it must.
    const percents = rounds.map((round) => {
      const { makes, attempts } = roundTally(round);
      return (100 * makes) / attempts;
    });
    const mean = percents.reduce((sum, one) => sum + one, 0) / rounds.length;
    const error = Math.sqrt(percents.reduce((sum, one) => sum + (one - mean) ** 2, 0)) / rounds.length;
    expect(Math.abs(mean - percent)).toBeLessThan(3 * error);
    expect(Math.abs(mean - 100 * p)).toBeGreaterThan(3 * error);

    // What the app shows and what the model reads is the sum, and that holds the make rate.
    const { cells } = modelData(rounds);
    const makes = cells.makes.reduce((sum, one) => sum + one, 0);
    const attempts = cells.attempts.reduce((sum, one) => sum + one, 0);
    expect(summaryOf(cellsOf(rounds).values()).relaxed).toMatchObject({ makes, attempts });
    expect(shooterFigures(book, 'ines').relaxed).toMatchObject({ makes, attempts });
    const { low, high } = present(proportion(makes, attempts, 0.997), 'a rate');
    expect(low).toBeLessThan(p);
    expect(high).toBeGreaterThan(p);
  });
});
