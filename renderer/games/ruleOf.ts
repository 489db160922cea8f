import { rngFromSeed } from '../basics/chance.ts';
import type { Stop } from '../court/cards.ts';
import type { DoubleBalls, GamePlan } from '../pressure/gamePlan.ts';
import { climb } from './climb.ts';
import { duel } from './duel.ts';
import { lives } from './lives.ts';
import { race } from './race.ts';
import { racks } from './racks.ts';
import { reach } from './reach.ts';
import type { Rule } from './rule.ts';
import { streak } from './streak.ts';
import { trips } from './trips.ts';

/** A game on a card, ready to be played and solved. */
export interface Game {
  readonly rule: Rule<unknown>;
  /** For every shot of the rule, the stop of the card it is taken at. */
  readonly stops: readonly number[];
}

/**
 * The rule of a plan on a card.
 *
 * @param seed decides which balls count double, where a coin does
 * @throws InvariantError where the game cannot be won, cannot end or does not fit the card; the message says why
 */
export function ruleOf(plan: GamePlan, card: readonly Stop[], seed: number): Game {
  const turns = card.flatMap(({ attempts }, stop) => Array.from({ length: attempts }, () => stop));
  switch (plan.family) {
    case 'reach':
    case 'last shot':
      return { rule: reach(plan.needed, turns.length), stops: turns };
    case 'streak':
      return { rule: streak(plan.row, plan.most, turns.length), stops: turns };
    case 'race':
      return { rule: race(plan, turns.length), stops: turns };
    case 'lives':
      return { rule: lives(plan.needed, plan.lives, turns.length), stops: turns };
    case 'trips':
      return { rule: trips(plan.kind, plan.trips, plan.needed), stops: [0] };
    case 'racks':
      return { rule: racks(worthOf(card, plan.double, seed), plan.needed), stops: turns };
    case 'climb': {
      const steps = card.map(({ attempts }, step) => ({ makes: plan.makes[step] ?? 0, shots: attempts }));
      return { rule: climb(steps, plan.back, plan.most), stops: card.map((_, step) => step) };
    }
    case 'duel':
      return {
        rule: duel({ ...plan, shots: turns.length, extraPairs: extraPairs(plan) }),
        stops: [...turns, ...turns],
      };
  }
}

/** An earlier round of one's own has no extra shots: level with it, nobody has won. */
function extraPairs({ against, extraPairs: pairs }: Extract<GamePlan, { family: 'duel' }>): number {
  return against.kind === 'own round' ? 0 : pairs;
}

/** One ball in five is double where a coin decides, as many as where the last of five is. */
const DOUBLE_SHARE = 0.2;

/** What each ball is worth, rack after rack; the toss is made once for the whole round. */
export function worthOf(card: readonly Stop[], double: DoubleBalls, seed: number): number[] {
  const rng = rngFromSeed(seed);
  return card.flatMap(({ attempts }) =>
    Array.from({ length: attempts }, (_, ball) => {
      const tossed = rng.chance(DOUBLE_SHARE);
      if (double === 'none') return 1;
      return (double === 'last' ? ball === attempts - 1 : tossed) ? 2 : 1;
    }),
  );
}
