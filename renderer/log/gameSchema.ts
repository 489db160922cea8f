import * as v from 'valibot';

import { DOUBLE_BALLS, TRIP_KINDS, type GamePlan } from '../pressure/gamePlan.ts';

/* What a game may look like in the log and in a shared file. Whether it can be won is the rule's own affair. */

const MOST_SHOTS = 1000;
const shots = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(MOST_SHOTS));
const points = v.pipe(v.number(), v.integer(), v.minValue(-MOST_SHOTS), v.maxValue(MOST_SHOTS));
const chance = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const seconds = v.pipe(v.number(), v.finite(), v.minValue(0));
const name = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
const list = <T extends v.GenericSchema>(item: T, most: number) =>
  v.pipe(v.array(item), v.minLength(1), v.maxLength(most), v.readonly());

export const GAME_PLAN = v.variant('family', [
  v.object({ family: v.literal('reach'), needed: shots }),
  v.object({ family: v.literal('streak'), row: shots, most: shots }),
  v.object({
    family: v.literal('race'),
    to: shots,
    up: shots,
    down: v.pipe(points, v.minValue(0)),
    floor: v.nullable(points),
    lost: v.nullable(points),
    most: shots,
  }),
  v.object({ family: v.literal('lives'), needed: shots, lives: shots }),
  v.object({
    family: v.literal('trips'),
    kind: v.picklist(TRIP_KINDS),
    trips: shots,
    needed: shots,
    scene: v.nullable(v.object({ down: points, left: seconds })),
  }),
  v.object({ family: v.literal('racks'), double: v.picklist(DOUBLE_BALLS), needed: shots }),
  v.object({ family: v.literal('last shot'), needed: shots, from: seconds, to: seconds }),
  v.object({
    family: v.literal('climb'),
    makes: list(shots, 30),
    back: v.pipe(points, v.minValue(0)),
    most: shots,
  }),
  v.object({
    family: v.literal('duel'),
    against: v.variant('kind', [
      v.object({ kind: v.literal('shooter') }),
      v.object({ kind: v.literal('own round'), round: v.string(), made: list(v.boolean(), MOST_SHOTS) }),
      v.object({ kind: v.literal('drawn'), rate: chance }),
    ]),
    headStart: points,
    extraPairs: v.pipe(points, v.minValue(0), v.maxValue(20)),
  }),
]) satisfies v.GenericSchema<unknown, GamePlan>;

/** A game as it is played in a round. */
export const PLAYED_GAME = v.object({ name, plan: GAME_PLAN, chance: v.nullable(chance) });
