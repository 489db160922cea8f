import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { isUuid, uuidV7 } from '../../renderer/basics/ids.ts';

/** The random bytes that give a known UUID: the bits that are not time, version or variant, in the library's packing. */
function randomBehind(uuid: string): Uint8Array {
  const bytes = Uint8Array.from(uuid.replaceAll('-', '').match(/../g) ?? [], (pair) =>
    Number.parseInt(pair, 16),
  );
  const at = (index: number) => bytes[index] ?? 0;
  const a = ((at(6) & 0x0f) << 8) | at(7);
  const b = ((at(8) & 0x3f) << 14) | (at(9) << 6) | (at(10) >> 2);
  // 12 bits of rand_a, then the first 20 of rand_b, as one 32-bit number.
  const seq = a * 2 ** 20 + b;
  return Uint8Array.from([
    0,
    0,
    0,
    0,
    0,
    0,
    ...[24, 16, 8, 0].map((shift) => Math.floor(seq / 2 ** shift) & 0xff),
    at(10) & 3,
    ...bytes.slice(11),
  ]);
}

const bytes = fc.uint8Array({ minLength: 16, maxLength: 16 });
const moment = fc.integer({ min: 0, max: Date.UTC(2200, 0, 1) });

describe('a UUID version 7', () => {
  it('is the example of RFC 9562, appendix A.6', () => {
    const example = '017f22e2-79b0-7cc3-98c4-dc0c0c07398f';
    const at = Date.parse('2022-02-22T14:22:22-05:00');
    expect(at).toBe(0x017f22e279b0);
    expect(uuidV7(at, randomBehind(example))).toBe(example);
  });
  it('carries its version, its variant and its time whatever the random bytes', () => {
    fc.assert(
      fc.property(moment, bytes, (at, random) => {
        const id = uuidV7(at, random);
        expect(isUuid(id)).toBe(true);
        expect(id[14]).toBe('7');
        expect(Number.parseInt(id.slice(0, 13).replace('-', ''), 16)).toBe(at);
      }),
    );
  });
  it('sorts by the time it was made', () => {
    fc.assert(
      fc.property(moment, moment, bytes, bytes, (a, b, one, other) => {
        fc.pre(a < b);
        expect(uuidV7(a, one) < uuidV7(b, other)).toBe(true);
      }),
    );
  });
  it('uses every random bit that the RFC leaves free: 74', () => {
    const bits = (id: string) => BigInt(`0x${id.replaceAll('-', '')}`);
    const none = bits(uuidV7(0, new Uint8Array(16)));
    let seen = 0n;
    for (let bit = 0; bit < 128; bit += 1) {
      const random = new Uint8Array(16);
      random[bit >> 3] = 1 << (bit & 7);
      seen |= bits(uuidV7(0, random)) ^ none;
    }
    expect(seen.toString(2).replaceAll('0', '')).toHaveLength(74);
  });
});

describe('what passes for a UUID', () => {
  it.each([
    ['017f22e2-79b0-7cc3-98c4-dc0c0c07398f', true],
    ['017F22E2-79B0-7CC3-98C4-DC0C0C07398F', false],
    ['017f22e2-79b0-7cc3-c8c4-dc0c0c07398f', false],
    ['017f22e279b07cc398c4dc0c0c07398f', false],
    ['', false],
    ['017f22e2-79b0-7cc3-98c4-dc0c0c07398f\n', false],
  ])('%j: %j', (text, is) => expect(isUuid(text)).toBe(is));
});
