import { v7 } from 'uuid';

import type { EpochMs } from './units.ts';

/** An identifier that remembers what it names, so that a round's id cannot be passed for a shooter's. */
export type Id<Kind extends string> = string & { readonly names?: Kind };

export type EventId = Id<'event'>;
export type ShooterId = Id<'shooter'>;
export type CardId = Id<'card'>;
export type GameId = Id<'game'>;
export type SessionId = Id<'session'>;
export type RoundId = Id<'round'>;
export type PairId = Id<'pair'>;
export type GroupId = Id<'group'>;
export type DeviceId = Id<'device'>;

/** Sixteen fresh random bytes at each call. */
export type RandomBytes = () => Uint8Array;

/** Makes a fresh id of any kind. */
export type NewId = <Kind extends string>() => Id<Kind>;

/**
 * A UUID version 7 (RFC 9562, section 5.7): 48 bits of Unix time in milliseconds, then 74 random bits, so ids
 * sort by the time they were made.
 *
 * @param at the moment the id is made
 * @param random sixteen random bytes; the version and variant bits in them are overwritten
 */
export function uuidV7<Kind extends string>(at: EpochMs, random: Uint8Array): Id<Kind> {
  const [b6 = 0, b7 = 0, b8 = 0, b9 = 0] = random.slice(6);
  // Left alone, the library keeps one of these bits at 0 for a counter that we do not count.
  const seq = ((b6 << 24) | (b7 << 16) | (b8 << 8) | b9) >>> 0;
  return v7({ msecs: at, random, seq });
}

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

/** True for a lower-case UUID as RFC 9562 writes it. */
export function isUuid(text: string): boolean {
  return UUID.test(text);
}
