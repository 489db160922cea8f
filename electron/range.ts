/** A part of a file: the first byte, and the one after the last. */
export interface ByteRange {
  readonly start: number;
  readonly end: number;
}

/**
 * The part that a `Range` header asks for (RFC 9110, section 14).
 *
 * @param header the header's value, or null
 * @param size the length of the file in bytes
 * @returns null when the whole file is to be sent (no header, not in bytes, malformed, or several parts, which a server may
 *   ignore); `'unsatisfiable'` when nothing of the file lies in it
 */
export function byteRange(header: string | null, size: number): ByteRange | 'unsatisfiable' | null {
  const parts = /^bytes=(\d*)-(\d*)$/i.exec(header?.trim() ?? '');
  const [, first = '', last = ''] = parts ?? [];
  if (first === '' && last === '') return null;
  if (first === '') {
    const length = Math.min(Number(last), size);
    return length === 0 ? 'unsatisfiable' : { start: size - length, end: size };
  }
  const start = Number(first);
  if (last !== '' && Number(last) < start) return null;
  if (start >= size) return 'unsatisfiable';
  return { start, end: last === '' ? size : Math.min(Number(last) + 1, size) };
}
