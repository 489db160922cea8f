import type { Rng } from '../../renderer/basics/chance.ts';
import { present } from '../../renderer/basics/invariant.ts';
import { reach } from '../../renderer/games/reach.ts';
import type { Rule, TurnResult } from '../../renderer/games/rule.ts';
import { solve } from '../../renderer/games/solver.ts';
import { streak } from '../../renderer/games/streak.ts';
import type { LeverageShot } from '../../renderer/stats/leverage.ts';

/** Simulated pressured rounds of one game, of which the truth is known. */
export interface LeverageWorld {
  readonly game: 'reach' | 'streak';
  readonly rounds: number;
  /** Log-odds that one standard deviation of leverage takes off. */
  readonly perSd: number;
  /** Standard deviation of rounds, log-odds. */
  readonly roundSd: number;
  /** Log-odds that the last of 25 shots loses against the first, whatever hangs on it. */
  readonly tires?: number;
}

/** Make rate of the simulated shooter before a round. */
const RATE = 0.5;
const SHOTS = 25;

const RULES: Readonly<Record<LeverageWorld['game'], Rule<unknown>>> = {
  reach: reach(13, SHOTS),
  streak: streak(5, SHOTS, SHOTS),
};

/** Leverage of the next shot at the rate before the round, by what was shot so far; the same for every round. */
function leverageOf(rule: Rule<unknown>): (results: readonly TurnResult[]) => number {
  const solved = solve(rule, { weights: [1], rates: [Array.from({ length: SHOTS }, () => RATE)] });
  const known = new Map<string, number>();
  return (results) => {
    const key = `${results.length} ${rule.key(solved.state(results))}`;
    const leverage = known.get(key) ?? solved.standing(results).leverage;
    known.set(key, leverage);
    return leverage;
  };
}

const LEVERAGES = { reach: leverageOf(RULES.reach), streak: leverageOf(RULES.streak) };

/** Plays the rounds, each by the game's rule to its end. The mean and the spread of leverage are those of a first run. */
export function playLeverage(world: LeverageWorld, scale: Scale, rng: Rng): LeverageShot[] {
  const rule = RULES[world.game];
  const leverageAfter = LEVERAGES[world.game];
  return Array.from({ length: world.rounds }, (_, round) => {
    const luck = world.roundSd * rng.normal();
    const results: TurnResult[] = [];
    const shots: LeverageShot[] = [];
    for (let state = rule.start; !rule.finished(state);) {
      const leverage = leverageAfter(results);
      const hangs = (leverage - scale.mean) / scale.sd;
      const tired = ((world.tires ?? 0) * results.length) / (SHOTS - 1);
      const odds = Math.log(RATE / (1 - RATE)) + luck - world.perSd * hangs - tired;
      const made = rng.chance(1 / (1 + Math.exp(-odds)));
      shots.push({ round: `${round}`, place: 'top', made, leverage, rate: RATE });
      results.push(made ? 'make' : 'miss');
      state = rule.step(state, made);
    }
    return shots;
  }).flat();
}

/** Where leverage lies in a game. */
export interface Scale {
  readonly mean: number;
  readonly sd: number;
}

/** Mean and standard deviation of the leverage of some shots. */
export function scaleOf(shots: readonly LeverageShot[]): Scale {
  const mean = shots.reduce((sum, { leverage }) => sum + leverage, 0) / shots.length;
  const square = shots.reduce((sum, { leverage }) => sum + (leverage - mean) ** 2, 0) / shots.length;
  return { mean, sd: Math.sqrt(square) };
}

/** The scale of a game where nothing hangs on leverage. */
export function scaleFor(game: LeverageWorld['game'], rng: Rng): Scale {
  const still = { game, rounds: 2000, perSd: 0, roundSd: 0 };
  return scaleOf(playLeverage(still, { mean: 0, sd: 1 }, rng));
}

/** All shots of each round. */
export function byRound(shots: readonly LeverageShot[]): LeverageShot[][] {
  const rounds = new Map<string, LeverageShot[]>();
  for (const shot of shots) {
    const round = rounds.get(shot.round);
    if (round) round.push(shot);
    else rounds.set(shot.round, [shot]);
  }
  return [...rounds.keys()].map((round) => present(rounds.get(round), 'a round'));
}
