import type { Probability, Seconds } from '../basics/units.ts';
import type { EntryWay } from '../log/events.ts';
import { ingredientsOf, type Mark, type PressureSetup } from '../pressure/ingredients.ts';
import { rungOf, type SeenBy } from '../pressure/ladder.ts';
import type { Doubles } from '../pressure/stakes.ts';

/** A pressured round as it stands in the form, before it is set up. */
export interface PressureWish {
  readonly stake: string;
  readonly mark: boolean;
  /** The chance the shooter would like. */
  readonly wanted: Probability;
  /** Makes chosen by hand; null follows the wanted chance. */
  readonly markMakes: number | null;
  readonly clock: 'none' | 'round' | 'shot';
  readonly roundSeconds: Seconds;
  readonly shotSeconds: Seconds;
  readonly crowd: boolean;
  readonly seen: SeenBy;
  /** A parent or guardian agreed to a video of someone under 18. Asked anew each time, and never logged. */
  readonly guardian: boolean;
  /** The debt it is shot for, double or nothing; `stake` is then that debt's. */
  readonly doubles: Doubles | null;
  readonly coldStart: boolean;
  readonly showChance: boolean;
}

/** A first wish for a card of so many attempts: an even mark, eight seconds a shot for the whole round, a crowd. */
export function freshWish(attempts: number): PressureWish {
  return {
    stake: '',
    mark: true,
    wanted: 0.5,
    markMakes: null,
    clock: 'round',
    roundSeconds: Math.max(20, Math.ceil((attempts * 8) / 5) * 5),
    shotSeconds: 8,
    crowd: true,
    seen: 'nobody',
    guardian: false,
    doubles: null,
    coldStart: false,
    showChance: true,
  };
}

/** The wish as it can be played: a clock for each shot needs every shot tapped, so a count gets one for the round. */
export function wishFor(entry: EntryWay, wish: PressureWish): PressureWish {
  return entry === 'counts' && wish.clock === 'shot' ? { ...wish, clock: 'round' } : wish;
}

/** The wish as it is logged. @param mark the mark with its chance, null for none */
export function setupOf(wish: PressureWish, mark: Mark | null, seed: number): PressureSetup {
  const setup = {
    stake: wish.stake.trim() === '' ? null : wish.stake.trim(),
    mark,
    clock:
      wish.clock === 'none'
        ? null
        : { kind: wish.clock, seconds: wish.clock === 'round' ? wish.roundSeconds : wish.shotSeconds },
    crowd: wish.crowd,
  };
  const { seen, coldStart, doubles, showChance } = wish;
  return {
    ...setup,
    ingredients: ingredientsOf(setup, { watchers: seen !== 'nobody', coldStart }),
    showChance,
    rung: rungOf({ stake: setup.stake, seen }),
    ...(doubles === null ? {} : { doubles }),
    seed,
  };
}
