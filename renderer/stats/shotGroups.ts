import type { Probability } from '../basics/units.ts';
import type { ShotKind, SpotName } from '../court/spots.ts';
import { isSpot } from '../court/spots.ts';

/** Shots of much the same make rate: what is known of one says something about the others. */
export type ShotGroup = 'threes' | 'mid-range' | 'free-throws' | 'own';

/** What is believed of a group before its first shot. */
export interface GroupPrior {
  /** Make rate at the middle. */
  readonly centre: Probability;
  /** Standard deviation of the group's rate between shooters, log-odds. */
  readonly sd: number;
  /** Standard deviation of the spots within the group, log-odds. */
  readonly spread: number;
}

/**
 * Weak on purpose, and our own choice, no source: two standard deviations cover 10 % to 73 % for threes. A shooter's
 * own spots may lie anywhere, so they differ more among themselves.
 */
export const GROUP_PRIORS: Readonly<Record<ShotGroup, GroupPrior>> = {
  threes: { centre: 0.35, sd: 0.8, spread: 0.3 },
  'mid-range': { centre: 0.4, sd: 0.8, spread: 0.3 },
  'free-throws': { centre: 0.65, sd: 0.8, spread: 0.3 },
  own: { centre: 0.5, sd: 0.8, spread: 0.6 },
};

/** The group of a shot, by where it is taken from: behind the arc, from the elbows, a free throw, or anywhere else. */
export function shotGroup(spot: SpotName, shot: ShotKind): ShotGroup {
  if (shot === 'free-throw') return 'free-throws';
  if (shot === 'form' || !isSpot(spot)) return 'own';
  return spot === 'left-elbow' || spot === 'right-elbow' || spot === 'free-throw' ? 'mid-range' : 'threes';
}
