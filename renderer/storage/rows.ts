import type { StoredEvent } from '../log/envelope.ts';
import { StorageError } from './messages.ts';

/*
 * How the log travels from the worker to the page: as the bytes of one JSON array of arrays, which SQLite puts together.
 * The bytes are handed over without a copy.
 */

/** Packs the whole log, in order of appending. */
export const PACK_ROWS = `
  SELECT '[' || coalesce(group_concat(
    '[' || json_quote(id) || ',' || at || ',' || zone || ',' || json_quote(device) || ',' || json_quote(type)
        || ',' || v || ',' || body || ']'
    ORDER BY seq), '') || ']'
  FROM event`;

type Row = readonly [
  id: string,
  at: number,
  zone: number,
  device: string,
  type: string,
  v: number,
  body: unknown,
];

/**
 * The events as they were stored. Nothing is known of them yet: whoever uses one parses it first.
 *
 * @throws StorageError `damaged` where the bytes are not such an array
 */
export function eventsFrom(rows: Uint8Array): StoredEvent[] {
  return parseRows(rows).map(([id, at, zone, device, type, v, body]) => ({
    id,
    at,
    zone,
    device,
    type,
    v,
    body,
  }));
}

function parseRows(rows: Uint8Array): readonly Row[] {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(rows)) as readonly Row[];
  } catch (error) {
    throw new StorageError('damaged', `the events cannot be read: ${String(error)}`);
  }
}
