import type { CardId } from '../basics/ids.ts';
import type { ShotKind, SpotName } from './spots.ts';

/** One stop of a card: so many attempts of one kind of shot from one spot. */
export interface Stop {
  readonly spot: SpotName;
  readonly shot: ShotKind;
  /** Whole number, 1 to {@link MOST_ATTEMPTS}. */
  readonly attempts: number;
}

/** A fixed list of stops, shot in order. */
export interface Card {
  readonly id: CardId;
  readonly name: string;
  readonly stops: readonly Stop[];
}

export const MOST_ATTEMPTS = 100;
export const MOST_STOPS = 30;

const THREES: readonly Stop[] = (
  ['left-corner', 'left-wing', 'top', 'right-wing', 'right-corner'] as const
).map((spot) => ({ spot, shot: 'catch', attempts: 5 }));
/** From each elbow the ball goes the way the elbow lies. */
const PULL_UPS: readonly Stop[] = [
  { spot: 'left-elbow', shot: 'dribble-left', attempts: 5 },
  { spot: 'right-elbow', shot: 'dribble-right', attempts: 5 },
];
const freeThrows = (attempts: number): Stop => ({ spot: 'free-throw', shot: 'free-throw', attempts });

/** The cards every shooter has. Their ids never change, since rounds in the log name them. */
export const STANDARD_CARDS: readonly Card[] = [
  { id: 'threes-25', name: 'Threes, five spots by five', stops: THREES },
  { id: 'pull-ups-10', name: 'Pull-ups, five each way', stops: PULL_UPS },
  { id: 'free-throws-10', name: 'Ten free throws', stops: [freeThrows(10)] },
  { id: 'free-throws-20', name: 'Twenty free throws', stops: [freeThrows(20)] },
  { id: 'whole-45', name: 'The whole card', stops: [...THREES, ...PULL_UPS, freeThrows(10)] },
];

/** Attempts on the whole card. */
export function attemptsOn(stops: readonly Stop[]): number {
  return stops.reduce((sum, stop) => sum + stop.attempts, 0);
}
