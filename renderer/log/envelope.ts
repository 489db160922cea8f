import * as v from 'valibot';

import { isUuid, type DeviceId, type EventId } from '../basics/ids.ts';
import type { EpochMs } from '../basics/units.ts';
import { BODIES, type Body, type EventType } from './events.ts';

/** What every event carries besides its body. */
export interface Envelope {
  readonly id: EventId;
  /** The device's wall clock when it happened. For labels and days; order in the log is the order of appending. */
  readonly at: EpochMs;
  /** Minutes east of UTC where the device stood. */
  readonly zone: number;
  readonly device: DeviceId;
}

export type LogEvent = {
  [T in EventType]: Envelope & { readonly type: T; readonly v: 1; readonly body: Body<T> };
}[EventType];

export type EventOf<T extends EventType> = Extract<LogEvent, { type: T }>;

/** An event as it is stored: one that a later version of the app wrote is kept as it is, and skipped. */
export interface StoredEvent extends Envelope {
  readonly type: string;
  readonly v: number;
  readonly body: unknown;
}

const ENVELOPE = v.object({
  id: v.pipe(v.string(), v.check(isUuid, 'not a UUID')),
  at: v.pipe(v.number(), v.integer()),
  zone: v.pipe(v.number(), v.integer()),
  device: v.string(),
  type: v.string(),
  v: v.pipe(v.number(), v.integer(), v.minValue(1)),
  body: v.unknown(),
});

export type Parsed =
  { readonly known: true; readonly event: LogEvent } | { readonly known: false; readonly event: StoredEvent };

function isEventType(type: string): type is EventType {
  return Object.hasOwn(BODIES, type);
}

/** A stored event that is damaged: its reason names the event and the field. */
export class DamagedEventError extends Error {
  override readonly name = 'DamagedEventError';
}

/**
 * Reads a stored event at the border.
 *
 * @returns `known: false` for a type or version this build does not know
 * @throws DamagedEventError where the envelope, or the body of a known event, is not what it should be
 */
export function parseEvent(stored: unknown): Parsed {
  const envelope = v.safeParse(ENVELOPE, stored);
  if (!envelope.success) throw damaged('An event', envelope.issues);
  const event = envelope.output;
  if (!isEventType(event.type) || event.v !== 1) return { known: false, event };
  const body = v.safeParse(BODIES[event.type], event.body);
  if (!body.success) throw damaged(`Event ${event.id} (${event.type})`, body.issues);
  return { known: true, event: { ...event, body: body.output } as LogEvent };
}

function damaged(what: string, issues: readonly v.BaseIssue<unknown>[]): DamagedEventError {
  const [first] = issues;
  const where = first ? v.getDotPath(first) : null;
  return new DamagedEventError(
    `${what} cannot be read: ${where ?? 'it'} – ${first?.message ?? 'unknown reason'}`,
  );
}
