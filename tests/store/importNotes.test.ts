import { expect, test } from 'vitest';

import { EMPTY_BOOK } from '../../renderer/log/book.ts';
import { readCsv } from '../../renderer/log/csvRead.ts';
import { importNotes } from '../../renderer/store/importNotes.ts';

const HEAD = 'date,session,round,condition,game,spot,shot,first,makes,attempts,nerves,shooter,note';

test('a file is looked over for new spots, days to come and whose it is', () => {
  const rounds = readCsv(
    [
      HEAD,
      '2026-11-24,1,1,relaxed,,left-wnig,catch,,3,5,,Robin,',
      '2026-11-24,1,1,relaxed,,top,catch,,3,5,,Robin,',
      '2027-11-24,2,1,relaxed,,Short-corner,catch,,3,5,,Kim,',
    ].join('\r\n'),
  );
  const book = { ...EMPTY_BOOK, ownSpots: new Map([['short corner', { x: 4, y: 0 }]]) };
  expect(importNotes(book, rounds, '2026-11-25')).toEqual({
    shooters: ['Robin', 'Kim'],
    newSpots: ['left-wnig'],
    future: ['2027-11-24'],
  });
  expect(importNotes(book, rounds, '2027-11-24').future).toEqual([]);
});
