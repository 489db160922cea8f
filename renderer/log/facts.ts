import type { DeviceId, NewId } from '../basics/ids.ts';
import type { EpochMs } from '../basics/units.ts';
import type { LogEvent } from './envelope.ts';
import type { Body, EventType } from './events.ts';

/** What happened, before it is stamped with an id, a moment and a device. */
export type Fact = { [T in EventType]: { readonly type: T; readonly body: Body<T> } }[EventType];

/** Where and when facts are stamped. */
export interface Stamp {
  readonly at: EpochMs;
  /** Minutes east of UTC. */
  readonly zone: number;
  readonly device: DeviceId;
  readonly newId: NewId;
}

/** Facts as events of version 1. */
export function stamp(facts: readonly Fact[], { at, zone, device, newId }: Stamp): LogEvent[] {
  return facts.map((fact) => ({ id: newId<'event'>(), at, zone, device, v: 1, ...fact }));
}
