import type { Metres } from '../../basics/units.ts';
import type { Units } from '../../log/events.ts';

const FOOT: Metres = 0.3048;

/** One step on a stepper for distances. */
export function distanceStep(units: Units): Metres {
  return units === 'metric' ? 0.1 : FOOT / 2;
}

/** A distance as the shooter reads it: `6.7 m` or `22 ft`, feet to the half. */
export function distanceWords(metres: Metres, units: Units): string {
  if (units === 'metric') return `${metres.toFixed(1)} m`;
  const feet = Math.round((metres / FOOT) * 2) / 2;
  return `${feet} ft`;
}
