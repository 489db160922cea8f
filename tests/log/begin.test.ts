import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { STANDARD_CARDS, type Card } from '../../renderer/court/cards.ts';
import {
  beginFacts,
  beginGroupFacts,
  conditionInPair,
  pairOrderFor,
  visitFor,
  type RoundPlan,
} from '../../renderer/log/begin.ts';
import { onCourt, PRESSURE, readableIds, START, tap } from './diary.ts';

const HOUR = 3_600_000;
const moment = (at: number, zone = 60) => ({ at, zone, newId: readableIds('new') });
const card = STANDARD_CARDS[0] as Card;

describe('a visit', () => {
  it('goes on with the shots already taken in it', () => {
    const log = onCourt();
    tap(log, 'ooo');
    log.write('RoundEnded', { round: 'round 1', why: 'stopped', clockLeft: null });
    expect(visitFor(log.book(), 'ines', moment(START + HOUR))).toEqual({
      session: 'visit 1',
      first: 3,
      facts: [],
    });
  });
  it.each([
    ['after three hours without a shot', START + 3 * HOUR + 60_000, 60, 'ines', '2026-11-25'],
    ['on the next day of the place', START + HOUR, 300, 'ines', '2026-11-26'],
    ['for another shooter', START + HOUR, 60, 'tobi', '2026-11-25'],
  ])('is a new one %s', (_what, at, zone, shooter, date) => {
    const log = onCourt();
    tap(log, 'ooo');
    log.write('RoundEnded', { round: 'round 1', why: 'stopped', clockLeft: null });
    expect(visitFor(log.book(), shooter, moment(at, zone))).toEqual({
      session: 'new 1',
      first: 0,
      facts: [{ type: 'SessionStarted', body: { session: 'new 1', shooter, date } }],
    });
  });
  it('that the toss of a pair began is the one its first round goes into', () => {
    const log = onCourt();
    log.write('RoundEnded', { round: 'round 1', why: 'stopped', clockLeft: null });
    log.write('SessionStarted', { session: 'visit 2', shooter: 'ines', date: '2026-11-26' });
    expect(visitFor(log.book(), 'ines', moment(START + 24 * HOUR))).toEqual({
      session: 'visit 2',
      first: 0,
      facts: [],
    });
  });
  it('is never that of a file', () => {
    const log = onCourt();
    log.write('RoundEnded', { round: 'round 1', why: 'stopped', clockLeft: null });
    log.write('RoundImported', {
      round: 'paper',
      shooter: 'ines',
      date: '2026-11-25',
      session: '2',
      label: '1',
      condition: 'relaxed',
      game: '',
      cells: [{ spot: 'top', shot: 'catch', makes: 50, attempts: 90 }],
      first: null,
      nerves: null,
      note: '',
    });
    expect(visitFor(log.book(), 'ines', moment(START + HOUR))).toMatchObject({
      session: 'visit 1',
      first: 0,
    });
  });
});

describe('starting a round', () => {
  const plan: RoundPlan = {
    shooter: 'ines',
    condition: 'pressured',
    card,
    entry: 'each-shot',
    nerves: 6,
    pressure: PRESSURE,
    pair: { id: 'pair 1', place: 2 },
  };

  it('opens a visit first where none goes on', () => {
    const { round, facts } = beginFacts(onCourt().book(), plan, moment(START + 24 * HOUR));
    expect(facts.map(({ type }) => type)).toEqual(['SessionStarted', 'RoundStarted']);
    expect(facts[1]).toMatchObject({
      body: {
        round,
        session: 'new 1',
        first: 0,
        nerves: 6,
        pressure: PRESSURE,
        pair: { id: 'pair 1', place: 2 },
      },
    });
  });
  it('writes the card down as it was, stop by stop', () => {
    const { facts } = beginFacts(onCourt().book(), plan, moment(START));
    expect(facts.at(-1)).toMatchObject({
      body: { card: { id: card.id, name: card.name, stops: card.stops } },
    });
  });
});

describe('starting a game of several', () => {
  const seats = ['tobi', 'ines'].map((shooter) => ({
    shooter,
    condition: 'pressured' as const,
    card,
    entry: 'each-shot' as const,
    nerves: shooter === 'ines' ? 6 : null,
    pressure: PRESSURE,
  }));
  const turns = { turns: 'stop', coin: true } as const;

  it('starts a round for each in their own visit, in the order they shoot', () => {
    const log = onCourt();
    tap(log, 'ooo');
    log.write('RoundEnded', { round: 'round 1', why: 'stopped', clockLeft: null });
    const { rounds, facts } = beginGroupFacts(log.book(), seats, turns, moment(START + HOUR));
    expect(facts.map(({ type }) => type)).toEqual(['SessionStarted', 'RoundStarted', 'RoundStarted']);
    const [, first, second] = facts;
    expect(first).toMatchObject({
      body: { shooter: 'tobi', round: rounds[0], first: 0, nerves: null, pair: null },
    });
    expect(second).toMatchObject({
      body: { shooter: 'ines', round: rounds[1], session: 'visit 1', first: 3, nerves: 6 },
    });
    log.tap(facts);
    expect(log.book()).toMatchObject({ skipped: 0, open: { shooter: 'tobi' } });
    expect([...log.book().waiting.values()].map(({ group }) => group)).toEqual([
      { id: log.book().open?.group?.id, place: 2, ...turns },
    ]);
  });
  it('takes nobody twice', () => {
    const twice = () =>
      beginGroupFacts(onCourt().book(), [...seats, ...seats.slice(1)], turns, moment(START));
    expect(twice).toThrow(/every shooter once/);
  });
});

describe('the coin of a pair', () => {
  it('falls the same for the same seed', () => {
    for (let seed = 0; seed < 100; seed += 1) expect(pairOrderFor(seed)).toBe(pairOrderFor(seed));
  });
  it.each([
    ['small seeds in a row', (n: number) => n],
    [
      'seeds below 2^31, as the invented season draws them',
      (n: number) => Math.imul(n, 104_729) & 0x7fffffff,
    ],
    ['any seeds', (n: number) => Math.imul(n, 2_654_435_761) >>> 0],
    ['large seeds in a row', (n: number) => 0xffffffff - n],
  ])('is fair over %s', (_what, seedAt) => {
    const n = 10_000;
    let relaxedFirst = 0;
    let same = 0;
    for (let at = 0; at < n; at += 1) {
      const order = pairOrderFor(seedAt(at));
      if (order === 'relaxed-first') relaxedFirst += 1;
      if (order === pairOrderFor(seedAt(at + 1))) same += 1;
    }
    // Five standard deviations of a fair coin: 250 of 10,000.
    expect(Math.abs(relaxedFirst - n / 2)).toBeLessThan(250);
    // And no pattern from one seed to the next.
    expect(Math.abs(same - n / 2)).toBeLessThan(250);
  });
  it('is fair over seeds drawn as the app draws them', () => {
    const rng = rngFromSeed(3);
    let relaxedFirst = 0;
    for (let at = 0; at < 10_000; at += 1)
      if (pairOrderFor(rng.below(2 ** 32)) === 'relaxed-first') relaxedFirst += 1;
    expect(Math.abs(relaxedFirst - 5000)).toBeLessThan(250);
  });
  it('gives both rounds, one of each', () => {
    expect([conditionInPair('relaxed-first', 1), conditionInPair('relaxed-first', 2)]).toEqual([
      'relaxed',
      'pressured',
    ]);
    expect([conditionInPair('pressured-first', 1), conditionInPair('pressured-first', 2)]).toEqual([
      'pressured',
      'relaxed',
    ]);
  });
});
