import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import type { Entry, Round } from '../../renderer/log/book.ts';
import { markOutcome, scoreMarks } from '../../renderer/stats/scoredMarks.ts';
import { PRESSURE } from '../log/diary.ts';
import { roundOf, three } from './rounds.ts';

/** A round of ten shots with the mark at six; makes of those taken, and what else is to be so. */
function marked(makes: number, taken = 10, change: Partial<Round> = {}): Round {
  const round = roundOf('pressured', [three('top', makes, 10)]);
  const count: Entry = { kind: 'count', id: 'e', at: 0, stop: 0, makes, attempts: taken };
  const pressure = { ...PRESSURE, mark: { makes: 6, chance: 0.4 } };
  return { ...round, pressure, entries: [count], ...change };
}

const BEATEN = { chance: 0.4, beaten: true };
const SHORT = { chance: 0.4, beaten: false };
const lost: Entry = { kind: 'expired', id: 'x', at: 0, stop: 0 };

describe('what came of a mark', () => {
  it.each([
    ['reached', marked(6), BEATEN],
    ['one short', marked(5), SHORT],
    ['reached, and the round ended early', marked(6, 8, { ending: 'stopped' }), BEATEN],
    ['out of reach when the round was ended', marked(2, 7, { ending: 'stopped' }), SHORT],
    ['still in reach when the round was ended', marked(2, 6, { ending: 'stopped' }), null],
    ['still being played', marked(6, 8, { state: 'paused', ending: null }), null],
    ['the clock ran out', marked(6, 8, { ending: 'time-up' }), null],
    ['the device broke it off', marked(6, 8, { ending: 'interrupted' }), null],
    ['the shot clock took a turn', { ...marked(6, 9), entries: [...marked(6, 9).entries, lost] }, null],
    ['no mark', marked(6, 10, { pressure: { ...PRESSURE, mark: null } }), null],
    ['relaxed', marked(6, 10, { pressure: null }), null],
  ])('%s', (_, round, wanted) => {
    expect(markOutcome(round)).toEqual(wanted);
  });
});

describe('marks put together by chance', () => {
  it('are counted in fifths, the smallest chance first, empty ones left out', () => {
    const scored = scoreMarks([
      { chance: 0.5, beaten: true },
      { chance: 0.1, beaten: false },
      { chance: 0.4, beaten: false },
      { chance: 0.59, beaten: true },
      { chance: 1, beaten: true },
    ]);
    expect(scored.map(({ marks, beaten }) => [marks, beaten])).toEqual([
      [1, 0],
      [3, 2],
      [1, 1],
    ]);
    expect(scored[1]?.said).toBeCloseTo((0.5 + 0.4 + 0.59) / 3, 12);
  });
  it('say between which numbers beaten ones fall four times in five, were the chances right', () => {
    const chances = Array.from({ length: 30 }, (_, at) => 0.4 + (0.19 * at) / 30);
    const rng = rngFromSeed(6);
    let within = 0;
    const TRIALS = 2000;
    for (let trial = 0; trial < TRIALS; trial += 1) {
      const [scored] = scoreMarks(chances.map((chance) => ({ chance, beaten: rng.chance(chance) })));
      if (scored && scored.beaten >= scored.low && scored.beaten <= scored.high) within += 1;
    }
    // Three standard errors; whole numbers make it hold a little more than 80 %.
    expect(within / TRIALS).toBeGreaterThan(0.8 - 0.027);
    expect(within / TRIALS).toBeLessThan(0.9);
  });
  it('are none without a mark', () => {
    expect(scoreMarks([])).toEqual([]);
  });
});
