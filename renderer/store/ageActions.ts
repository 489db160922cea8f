import type { ShooterId } from '../basics/ids.ts';
import type { Gym } from './gymStore.ts';

/* Who is under age, and what an adult allowed them. */

export function tellAge(gym: Gym, shooter: ShooterId, under18: boolean): Promise<boolean> {
  return gym.dispatch([{ type: 'AgeTold', body: { shooter, under18 } }]);
}

export function allowFavours(gym: Gym, shooter: ShooterId, allowed: boolean): Promise<boolean> {
  return gym.dispatch([{ type: 'FavoursAllowed', body: { shooter, allowed } }]);
}
