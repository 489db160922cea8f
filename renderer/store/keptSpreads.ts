import type { ShooterId } from '../basics/ids.ts';
import { SPREADS, type Spreads } from '../stats/model/priors.ts';
import type { Shelf } from './settings.ts';

/*
 * The spreads learnt by the last thorough study, so that the next round's quick one can start from them. They follow from
 * the log, so they live beside it and may be lost without harm.
 */

const NAME = 'loud-gym-spreads';

/** Null where none were kept, or what was kept is no set of spreads. */
export function keptSpreads(shelf: Shelf, shooter: ShooterId): Spreads | null {
  const kept = all(shelf)[shooter];
  if (kept === null || typeof kept !== 'object') return null;
  const found = new Map(Object.entries(kept));
  const [skill, day, week, dayPressure] = SPREADS.map((name) => Number(found.get(name)));
  const spreads = {
    skill: skill ?? NaN,
    day: day ?? NaN,
    week: week ?? NaN,
    dayPressure: dayPressure ?? NaN,
  };
  return SPREADS.every((name) => spreads[name] > 0 && spreads[name] < 10) ? spreads : null;
}

export function keepSpreads(shelf: Shelf, shooter: ShooterId, spreads: Spreads): void {
  shelf.write(NAME, JSON.stringify({ ...all(shelf), [shooter]: spreads }));
}

function all(shelf: Shelf): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = JSON.parse(shelf.read(NAME) ?? '{}');
    return value !== null && typeof value === 'object' ? { ...value } : {};
  } catch {
    return {};
  }
}
