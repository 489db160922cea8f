import type { Probability, Seconds } from '../basics/units.ts';
import { attemptsOn } from '../court/cards.ts';
import type { OwnGame } from '../log/book.ts';
import type { EntryWay } from '../log/events.ts';
import type { PlayedGame } from '../pressure/gamePlan.ts';
import { ingredientsOf, type ClockSetting, type Mark, type PressureSetup } from '../pressure/ingredients.ts';
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

/** A first wish for a game: its own clock and crowd, and the game in place of a mark. */
export function gameWish({ stops, clock, crowd }: Pick<OwnGame, 'stops' | 'clock' | 'crowd'>): PressureWish {
  const fresh = freshWish(attemptsOn(stops));
  return {
    ...fresh,
    clock: clock?.kind ?? 'none',
    roundSeconds: clock?.kind === 'round' ? clock.seconds : fresh.roundSeconds,
    shotSeconds: clock?.kind === 'shot' ? clock.seconds : fresh.shotSeconds,
    crowd,
  };
}

/** The clock that is wished for. */
export function clockOf({
  clock,
  roundSeconds,
  shotSeconds,
}: Pick<PressureWish, 'clock' | 'roundSeconds' | 'shotSeconds'>): ClockSetting | null {
  return clock === 'none' ? null : { kind: clock, seconds: clock === 'round' ? roundSeconds : shotSeconds };
}

/**
 * The wish as it is logged.
 *
 * @param mark the mark with its chance, null for none
 * @param game a game in place of a mark
 */
export function setupOf(
  wish: PressureWish,
  mark: Mark | null,
  seed: number,
  game: PlayedGame | null = null,
): PressureSetup {
  const setup = {
    stake: wish.stake.trim() === '' ? null : wish.stake.trim(),
    mark,
    ...(game === null ? {} : { game }),
    clock: clockOf(wish),
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
