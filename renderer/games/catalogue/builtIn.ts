import type { Stop } from '../../court/cards.ts';
import type { ShotKind, Spot } from '../../court/spots.ts';
import type { OwnGame } from '../../log/book.ts';

/** A game every shooter has. */
export interface BuiltInGame extends OwnGame {
  /** What it is, in one sentence. */
  readonly words: string;
}

/** A crowd, and all the time there is. */
export const LOUD = { clock: null, crowd: true } as const;

/** So many attempts of one kind from some spots, in this order. */
export function from(spots: readonly Spot[], shot: ShotKind, attempts: number): Stop[] {
  return spots.map((spot) => ({ spot, shot, attempts }));
}

export function freeThrows(attempts: number): Stop[] {
  return from(['free-throw'], 'free-throw', attempts);
}

export const ARC = ['left-corner', 'left-wing', 'top', 'right-wing', 'right-corner'] as const;

/** From each elbow off the dribble, the way the elbow lies. */
export function pullUps(attempts: number): Stop[] {
  return [
    ...from(['left-elbow'], 'dribble-left', attempts),
    ...from(['right-elbow'], 'dribble-right', attempts),
  ];
}
