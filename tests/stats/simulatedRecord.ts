import type { Rng } from '../../renderer/basics/chance.ts';
import type { Stop } from '../../renderer/court/cards.ts';
import { simulateCard, simulateDay, type SimulatedShooter } from '../../renderer/games/simulate.ts';
import type { Cell, Round } from '../../renderer/log/book.ts';
import type { Condition } from '../../renderer/log/events.ts';
import { GROUP_PRIORS, shotGroup } from '../../renderer/stats/shotGroups.ts';
import { logit } from '../../renderer/stats/special.ts';
import { roundOf } from './rounds.ts';

/** A shooter from the prior; good and bad days have a standard deviation of 0.25, a day's answer to pressure 0.15. */
export function someShooter(rng: Rng): { shooter: SimulatedShooter; day: () => SimulatedShooter } {
  const groups = new Map<string, number>();
  const spots = new Map<string, number>();
  const rate: SimulatedShooter['rate'] = (spot, shot) => {
    const group = shotGroup(spot, shot);
    const { centre, sd, spread } = GROUP_PRIORS[group];
    const middle = groups.get(group) ?? logit(centre) + sd * rng.normal();
    groups.set(group, middle);
    const own = spots.get(`${spot} ${shot}`) ?? middle + spread * rng.normal();
    spots.set(`${spot} ${shot}`, own);
    return own;
  };
  const shooter = { rate, pressureCost: 0.35 * rng.normal(), daySd: 0.25 };
  return { shooter, day: () => ({ ...shooter, pressureCost: shooter.pressureCost + 0.15 * rng.normal() }) };
}

/** One day's rounds of one card, all with the same luck. */
export function dayOf(
  date: string,
  shooter: SimulatedShooter,
  stops: readonly Stop[],
  plan: readonly Condition[],
  rng: Rng,
): Round[] {
  const luck = simulateDay(shooter, rng);
  return plan.map((condition) =>
    roundOf(condition, cellsFrom(stops, simulateCard(shooter, stops, condition === 'pressured', luck, rng)), {
      date,
    }),
  );
}

function cellsFrom(stops: readonly Stop[], made: readonly boolean[]): Cell[] {
  let from = 0;
  return stops.map(({ spot, shot, attempts }) => {
    const makes = made.slice(from, from + attempts).filter(Boolean).length;
    from += attempts;
    return { spot, shot, attempts, makes };
  });
}
