import { isoDateAt } from '../basics/days.ts';
import type { IsoDate } from '../basics/units.ts';
import type { Gym } from './gymStore.ts';

/** The calendar day where the device stands. */
export function todayAt(gym: Gym): IsoDate {
  const { at, zone } = gym.moment();
  return isoDateAt(at, zone);
}
