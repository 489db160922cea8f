import type { ClockSetting } from '../../pressure/ingredients.ts';
import { ARC, type BuiltInGame, freeThrows, from, LOUD, pullUps } from './builtIn.ts';

const onClock = (seconds: number): { clock: ClockSetting; crowd: boolean } => ({
  clock: { kind: 'round', seconds },
  crowd: true,
});
/** A last shot brings a clock of its own; this is the longest it can show. */
const atBuzzer = (seconds: number): { clock: ClockSetting; crowd: boolean } => ({
  clock: { kind: 'shot', seconds },
  crowd: true,
});

/**
 * Ends of games: trips to the line, racks against the clock, last shots. Five racks of five in 60 seconds, the last ball
 * of each double, is the contest as one of its published rules had it; 70 seconds came later (from memory).
 */
export const SCENE_GAMES: readonly BuiltInGame[] = [
  {
    id: 'trip-level',
    name: 'Level, no time left',
    words: 'The game is level and the clock is at nought: two free throws, and one of them wins it.',
    stops: freeThrows(2),
    plan: { family: 'trips', kind: 'two shots', trips: 1, needed: 1, scene: { down: 0, left: 0 } },
    ...LOUD,
  },
  {
    id: 'trip-down-one',
    name: 'Down one, three seconds',
    words: 'One point behind with three seconds left and two free throws: make both.',
    stops: freeThrows(2),
    plan: { family: 'trips', kind: 'two shots', trips: 1, needed: 2, scene: { down: 1, left: 3 } },
    ...LOUD,
  },
  {
    id: 'trip-three',
    name: 'Fouled on a three',
    words: 'Two behind with one second left and three free throws: make all three.',
    stops: freeThrows(3),
    plan: { family: 'trips', kind: 'three shots', trips: 1, needed: 3, scene: { down: 2, left: 1 } },
    ...LOUD,
  },
  {
    id: 'trip-bonus',
    name: 'Five trips, one-and-one',
    words: 'Five times to the line, and a second shot only after a make: seven points of the ten.',
    stops: freeThrows(10),
    plan: { family: 'trips', kind: 'one-and-one', trips: 5, needed: 7, scene: null },
    ...LOUD,
  },
  {
    id: 'racks-minute',
    name: 'Five racks in a minute',
    words:
      'Five racks of five around the arc in 60 seconds, the last ball of each counts double: twelve points.',
    stops: from(ARC, 'catch', 5),
    plan: { family: 'racks', double: 'last', needed: 12 },
    ...onClock(60),
  },
  {
    id: 'racks-coin',
    name: 'Five racks, double by coin',
    words:
      'Five racks in 70 seconds; a coin decides before each round which balls count double: twelve points.',
    stops: from(ARC, 'catch', 5),
    plan: { family: 'racks', double: 'coin', needed: 12 },
    ...onClock(70),
  },
  {
    id: 'racks-corners',
    name: 'Two corner racks in 24 seconds',
    words: 'Five from each corner in 24 seconds, the last ball of each counts double: four points.',
    stops: from(['left-corner', 'right-corner'], 'catch', 5),
    plan: { family: 'racks', double: 'last', needed: 4 },
    ...onClock(24),
  },
  {
    id: 'last-top',
    name: 'The last shot, from the top',
    words: 'Five last shots from the top of the key, each with two to five seconds on the clock: make two.',
    stops: from(['top'], 'catch', 5),
    plan: { family: 'last shot', needed: 2, from: 2, to: 5 },
    ...atBuzzer(5),
  },
  {
    id: 'last-corners',
    name: 'The last shot, from the corners',
    words: 'Three last shots from each corner, each with two to four seconds on the clock: make three.',
    stops: from(['left-corner', 'right-corner'], 'catch', 3),
    plan: { family: 'last shot', needed: 3, from: 2, to: 4 },
    ...atBuzzer(4),
  },
  {
    id: 'last-elbows',
    name: 'The last shot, off the dribble',
    words:
      'Three last shots from each elbow off the dribble, each with three to eight seconds left: make three.',
    stops: pullUps(3),
    plan: { family: 'last shot', needed: 3, from: 3, to: 8 },
    ...atBuzzer(8),
  },
];
