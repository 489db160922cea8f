import { describe, expect, test } from 'vitest';

import { StorageError } from '../../renderer/storage/messages.ts';
import { eventsFrom } from '../../renderer/storage/rows.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('the packed log', () => {
  test('becomes events again', () => {
    const packed = bytesOf('[["an id",5,-60,"a device","ShotTaken",2,{"made":true}]]');
    expect(eventsFrom(packed)).toEqual([
      { id: 'an id', at: 5, zone: -60, device: 'a device', type: 'ShotTaken', v: 2, body: { made: true } },
    ]);
  });

  test.each([
    ['is no JSON', bytesOf('[["an id",5,')],
    ['is no UTF-8', Uint8Array.of(0x5b, 0x22, 0xff, 0x22, 0x5d)],
  ])('is called damaged where it %s', (_, packed) => {
    expect(() => eventsFrom(packed)).toThrow(StorageError);
    expect(() => eventsFrom(packed)).toThrow(expect.objectContaining({ failure: 'damaged' }));
  });
});
