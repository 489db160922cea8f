import type { Rng } from '../basics/chance.ts';
import type { Probability } from '../basics/units.ts';
import type { Stop } from '../court/cards.ts';
import type { ShotKind, SpotName } from '../court/spots.ts';

/** A shooter whose truth is known, so that games can play themselves and the statistics can be checked. */
export interface SimulatedShooter {
  /** Relaxed make rate from a spot on a typical day, as log-odds. */
  rate(spot: SpotName, shot: ShotKind): number;
  /** What pressure takes off, in log-odds; positive = worse under pressure. */
  readonly pressureCost: number;
  /** Standard deviation of good and bad days, in log-odds. */
  readonly daySd: number;
}

/** One day of a simulated shooter: the same luck for everything shot on it. */
export interface SimulatedDay {
  readonly shift: number;
}

export function simulateDay(shooter: SimulatedShooter, rng: Rng): SimulatedDay {
  return { shift: shooter.daySd * rng.normal() };
}

/** The chance that one attempt at a stop goes in. */
export function makeRate(
  shooter: SimulatedShooter,
  { spot, shot }: Pick<Stop, 'spot' | 'shot'>,
  pressured: boolean,
  day: SimulatedDay,
): Probability {
  const logOdds = shooter.rate(spot, shot) + day.shift - (pressured ? shooter.pressureCost : 0);
  return 1 / (1 + Math.exp(-logOdds));
}

/** Plays a card through. @returns for every attempt in card order, whether it went in */
export function simulateCard(
  shooter: SimulatedShooter,
  stops: readonly Stop[],
  pressured: boolean,
  day: SimulatedDay,
  rng: Rng,
): boolean[] {
  const made: boolean[] = [];
  for (const stop of stops) {
    const p = makeRate(shooter, stop, pressured, day);
    for (let n = 0; n < stop.attempts; n += 1) made.push(rng.chance(p));
  }
  return made;
}
