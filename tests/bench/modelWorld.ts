import { addDays } from '../../renderer/basics/days.ts';
import type { Rng } from '../../renderer/basics/chance.ts';
import type { ShotKind, SpotName } from '../../renderer/court/spots.ts';
import type { Entry, Round } from '../../renderer/log/book.ts';
import type { Condition } from '../../renderer/log/events.ts';
import { expit } from '../../renderer/stats/special.ts';
import { roundOf } from '../stats/rounds.ts';

/*
 * A simulated shooter of known truth. Log-odds of a make: spot, a cold start of −0.4 exp(−i/15), tiredness, a skill
 * that rises by 0.4 in half a year and wanders, good and bad days, and pressure.
 */

/** A spot with its log-odds for a warm, fresh and relaxed shooter. */
interface Target {
  readonly spot: SpotName;
  readonly shot: ShotKind;
  readonly logit: number;
}

/** Threes from −0.4, elbows, free throws at +1.0. */
export const TARGETS: readonly Target[] = [
  { spot: 'left-corner', shot: 'catch', logit: -0.4 },
  { spot: 'left-wing', shot: 'catch', logit: -0.2 },
  { spot: 'top', shot: 'catch', logit: -0.1 },
  { spot: 'right-wing', shot: 'catch', logit: -0.2 },
  { spot: 'right-corner', shot: 'catch', logit: -0.3 },
  { spot: 'left-elbow', shot: 'catch', logit: 0.2 },
  { spot: 'right-elbow', shot: 'catch', logit: 0.3 },
  { spot: 'free-throw', shot: 'free-throw', logit: 1 },
];

/** Shots of a round at each of {@link TARGETS}. */
export type Mix = readonly number[];

/** 60 % threes, 20 % elbows, 20 % free throws. */
export const RELAXED_MIX: Mix = [3, 3, 3, 3, 3, 3, 2, 5];
/** 40 %, 10 %, 50 %: the pressured rounds lean to free throws. */
export const FREE_THROW_MIX: Mix = [2, 2, 2, 2, 2, 1, 2, 12];
/** 76 %, 12 %, 12 %: the pressured rounds lean to threes. */
export const THREE_MIX: Mix = [4, 4, 4, 4, 3, 2, 1, 3];

export interface World {
  readonly weeks: number;
  /** Sessions in a week. */
  readonly sessions: number;
  /** Conditions of a session's rounds, in order. */
  readonly plan: (rng: Rng, session: number) => readonly Condition[];
  readonly relaxedMix: Mix;
  readonly pressuredMix: Mix;
  /** Log-odds that pressure adds in a week. */
  readonly pressure: (week: number) => number;
  /** Log-odds of a shot by its place in the session, from 0. */
  readonly order: (shot: number) => number;
  /** Step of the skill walk. */
  readonly skillSd: number;
  /** Steady rise of skill in 26 weeks. */
  readonly skillRise: number;
  readonly daySd: number;
  readonly dayPressureSd: number;
  /** A round's own luck beyond chance. */
  readonly roundSd: number;
  /** Whether single shots are noted, or one count for each spot. */
  readonly singly: boolean;
}

export const PLAIN: World = {
  weeks: 4,
  sessions: 4,
  plan: () => ['relaxed', 'relaxed', 'relaxed', 'relaxed', 'relaxed', 'relaxed', 'pressured', 'pressured'],
  relaxedMix: RELAXED_MIX,
  pressuredMix: FREE_THROW_MIX,
  pressure: () => 0,
  order: (shot) => -0.4 * Math.exp(-shot / 15) - (0.2 * Math.max(0, shot - 100)) / 100,
  skillSd: 0.03,
  skillRise: 0.4,
  daySd: 0.25,
  dayPressureSd: 0.05,
  roundSd: 0,
  singly: false,
};

export interface Played {
  readonly rounds: readonly Round[];
  /** True standardised drop of each week over the relaxed mix, points. */
  readonly drops: readonly number[];
}

const FIRST_MONDAY = '2021-01-04';

export function play(world: World, rng: Rng): Played {
  const rounds: Round[] = [];
  const drops: number[] = [];
  let walk = 0;
  for (let week = 0; week < world.weeks; week += 1) {
    walk += world.skillSd * rng.normal();
    const skill = walk + (world.skillRise * week) / 26;
    const pressure = world.pressure(week);
    drops.push(trueDrop(skill, pressure));
    for (let session = 0; session < world.sessions; session += 1) {
      const date = addDays(FIRST_MONDAY, 7 * week + Math.floor((7 * session) / world.sessions));
      const day = world.daySd * rng.normal();
      const answer = world.dayPressureSd * rng.normal();
      let first = 0;
      for (const [index, condition] of world.plan(rng, session).entries()) {
        const level = skill + day + world.roundSd * rng.normal();
        const more = condition === 'pressured' ? pressure + answer : 0;
        const mix = condition === 'pressured' ? world.pressuredMix : world.relaxedMix;
        const name = `${date} ${session}`;
        const round = shootRound(
          { condition, mix, level: level + more, first, world, date, name, index },
          rng,
        );
        rounds.push(round);
        first += mix.reduce((sum, shots) => sum + shots, 0);
      }
    }
  }
  return { rounds, drops };
}

/** Relaxed minus pressured make percentage over the relaxed mix, warm, fresh, on a typical day. */
export function trueDrop(skill: number, pressure: number): number {
  const all = RELAXED_MIX.reduce((sum, shots) => sum + shots, 0);
  return TARGETS.reduce((sum, { logit }, target) => {
    const share = (RELAXED_MIX[target] ?? 0) / all;
    return sum + 100 * share * (expit(skill + logit) - expit(skill + logit + pressure));
  }, 0);
}

/** The log-odds that cost a number of points at a skill, by halving. */
export function pressureFor(points: number, skill: number): number {
  let low = -3;
  let high = 3;
  for (let round = 0; round < 60; round += 1) {
    const middle = (low + high) / 2;
    if (trueDrop(skill, middle) > points) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

interface RoundPlan {
  readonly condition: Condition;
  readonly mix: Mix;
  readonly level: number;
  readonly first: number;
  readonly world: World;
  readonly date: string;
  readonly name: string;
  readonly index: number;
}

function shootRound({ condition, mix, level, first, world, date, name, index }: RoundPlan, rng: Rng): Round {
  // Every shot of the card, in an order of chance.
  const card = mix.flatMap((shots, target) => Array.from({ length: shots }, () => target));
  for (let i = card.length - 1; i > 0; i -= 1) {
    const j = rng.below(i + 1);
    [card[i], card[j]] = [card[j] ?? 0, card[i] ?? 0];
  }
  const makes = mix.map(() => 0);
  const shots: Entry[] = [];
  for (const [place, target] of card.entries()) {
    const order = world.order(first + place);
    const made = rng.chance(expit(level + order + (TARGETS[target]?.logit ?? NaN)));
    if (made) makes[target] = (makes[target] ?? 0) + 1;
    if (world.singly) shots.push({ kind: 'shot', id: '', at: 0, stop: target, made, side: null });
  }
  const cells = TARGETS.map(({ spot, shot }, target) => ({
    spot,
    shot,
    attempts: mix[target] ?? 0,
    makes: makes[target] ?? 0,
  }));
  const counted = roundOf(condition, cells, { date, session: name });
  return {
    ...counted,
    id: `${name} ${index}`,
    label: String(index + 1),
    entries: world.singly ? shots : counted.entries,
  };
}
