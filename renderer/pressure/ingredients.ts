import type { Probability, Seconds } from '../basics/units.ts';
import type { PlayedGame } from './gamePlan.ts';
import type { Rung } from './ladder.ts';
import type { Doubles } from './stakes.ts';

/** What turns pressure on in a round. */
export const INGREDIENTS = [
  'clock',
  'crowd',
  'stake',
  'watchers',
  'must-make',
  'opponent',
  'cold-start',
] as const;
export type Ingredient = (typeof INGREDIENTS)[number];

/** Two kinds of clock: one for each shot, or one for the whole round. */
export type ClockKind = 'shot' | 'round';

export interface ClockSetting {
  readonly kind: ClockKind;
  /** Full time on the clock. */
  readonly seconds: Seconds;
}

/** The number to beat, with its honest chance at the moment it was set. */
export interface Mark {
  /** Makes needed on the card. */
  readonly makes: number;
  readonly chance: Probability;
}

/** How one pressured round was set up. Logged whole with the round. */
export interface PressureSetup {
  readonly ingredients: readonly Ingredient[];
  /** In the shooter's own words; null for none. */
  readonly stake: string | null;
  readonly mark: Mark | null;
  /** A game other than a mark on the card; such a round has no mark. Missing in rounds from before there were games. */
  readonly game?: PlayedGame | null;
  readonly clock: ClockSetting | null;
  readonly crowd: boolean;
  /** False: the live chance of winning stays hidden from the shooter. */
  readonly showChance: boolean;
  /** The rung of the consequence ladder. Missing in rounds from before there was one. */
  readonly rung?: Rung;
  /** The debt it is shot for, double or nothing. */
  readonly doubles?: Doubles | null;
  /** Decides everything random in the round, so that a replay is exact. */
  readonly seed: number;
}

/** Pressure as a shooter usually meets it. */
export interface UsualPressure {
  /** Mean level of the pressured shots, as a fraction of the highest. */
  readonly dose: Probability;
  /** Share of the pressured shots with each ingredient on; one that was never on may be left out. */
  readonly ingredients: Readonly<Partial<Record<Ingredient, Probability>>>;
}

export const HIGHEST_LEVEL = 5;

/** Pressure level of so many ingredients: one for each, at most {@link HIGHEST_LEVEL}. */
export function levelOf(ingredients: number): number {
  return Math.min(HIGHEST_LEVEL, ingredients);
}

/** Pressure level of a round; 0 is relaxed. */
export function pressureLevel(setup: PressureSetup | null): number {
  return setup ? levelOf(setup.ingredients.length) : 0;
}

/** The ingredients that follow from how the round is set up, watchers and a cold start as the shooter says. */
export function ingredientsOf(
  setup: Pick<PressureSetup, 'stake' | 'mark' | 'game' | 'clock' | 'crowd'>,
  told: { readonly watchers: boolean; readonly coldStart: boolean },
): Ingredient[] {
  const on: Readonly<Record<Ingredient, boolean>> = {
    clock: setup.clock !== null,
    crowd: setup.crowd,
    stake: setup.stake !== null,
    watchers: told.watchers,
    'must-make': setup.mark !== null || hasGame(setup),
    opponent: setup.game?.plan.family === 'duel',
    'cold-start': told.coldStart,
  };
  return INGREDIENTS.filter((ingredient) => on[ingredient]);
}

function hasGame({ game }: Pick<PressureSetup, 'game'>): boolean {
  return game !== undefined && game !== null;
}
