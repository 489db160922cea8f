import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { RULE_SETS } from '../../renderer/court/ruleSets.ts';
import { EMPTY_BOOK, type Book } from '../../renderer/log/book.ts';
import type { LogEvent } from '../../renderer/log/envelope.ts';
import {
  CONDITIONS,
  ENDINGS,
  ENTRY_WAYS,
  HANDS,
  MISS_SIDES,
  UNITS,
  type Body,
  type EventType,
} from '../../renderer/log/events.ts';
import { stamp, type Fact } from '../../renderer/log/facts.ts';
import { fold, foldAll } from '../../renderer/log/fold.ts';
import { nextTurn, roundCells, roundTally, turnsOf, turnsUsed } from '../../renderer/log/roundCells.ts';
import { frozen, PRESSURE, readableIds, START, STOPS } from './diary.ts';

/*
 * Laws that hold for any log whatever, sensible or not: facts are drawn at random over a few shooters, visits and rounds.
 */

const shooter = fc.constantFrom('ines', 'tobi');
const session = fc.constantFrom('visit 1', 'visit 2', 'no visit');
const anyRound = fc.constantFrom('round 1', 'round 2', 'round 3', 'paper 1');
const anyStop = fc.nat({ max: 3 });
const small = fc.nat({ max: 3 });
const rating = fc.option(fc.nat({ max: 10 }));
const clockLeft = fc.option(fc.nat({ max: 60 }));
const person = {
  shooter,
  name: fc.string(),
  hand: fc.constantFrom(...HANDS),
  rules: fc.constantFrom(...RULE_SETS),
  units: fc.constantFrom(...UNITS),
};

function fact<T extends EventType>(type: T, body: fc.Arbitrary<Body<T>>): fc.Arbitrary<Fact> {
  return body.map((drawn) => ({ type, body: drawn }) as unknown as Fact);
}

const card: Body<'RoundStarted'>['card'] = { id: 'small', name: 'A small card', stops: [...STOPS] };
const pressure: Body<'RoundStarted'>['pressure'] = { ...PRESSURE, ingredients: [...PRESSURE.ingredients] };
const cells: Body<'RoundImported'>['cells'] = [{ spot: 'top', shot: 'catch', makes: 1, attempts: 2 }];

const started = fc.record({
  round: anyRound,
  session,
  shooter,
  condition: fc.constantFrom(...CONDITIONS),
  card: fc.constant(card),
  entry: fc.constantFrom(...ENTRY_WAYS),
  first: fc.option(small),
  nerves: rating,
  pair: fc.constant(null),
  pressure: fc.constantFrom(null, pressure),
});
// Entries told before there were round clocks have no time with them.
const shotTaken = fc.record(
  {
    round: anyRound,
    stop: anyStop,
    made: fc.boolean(),
    side: fc.option(fc.constantFrom(...MISS_SIDES)),
    clockLeft,
  },
  { requiredKeys: ['round', 'stop', 'made', 'side'] },
);
const stopCounted = fc
  .record(
    { round: anyRound, stop: anyStop, makes: small, attempts: small, clockLeft },
    { requiredKeys: ['round', 'stop', 'makes', 'attempts'] },
  )
  .map(({ makes, attempts, ...rest }) => ({ ...rest, makes, attempts: Math.max(1, makes, attempts) }));
const fromFile = fc.record({
  round: fc.constantFrom('paper 1', 'paper 2', 'round 1'),
  shooter,
  date: fc.constant('2026-10-01'),
  session: fc.constantFrom('1', '2'),
  label: fc.constantFrom('1', '2'),
  condition: fc.constantFrom(...CONDITIONS),
  game: fc.string(),
  cells: fc.constant(cells),
  first: fc.option(small),
  nerves: rating,
  note: fc.string(),
});
const afterRated = fc.record(
  { round: anyRound, nerves: rating, effort: rating, note: fc.string(), tooMuch: fc.boolean() },
  { requiredKeys: ['round', 'nerves', 'effort', 'note'] },
);
const aRound = fc.record({ round: anyRound });

const anyFact: fc.Arbitrary<Fact> = fc.oneof(
  fact('ShooterAdded', fc.record({ ...person, demo: fc.boolean() })),
  fact('ShooterChanged', fc.record(person)),
  fact('ShooterRemoved', fc.record({ shooter })),
  fact('AgeTold', fc.record({ shooter, under18: fc.boolean() })),
  fact('FavoursAllowed', fc.record({ shooter, allowed: fc.boolean() })),
  fact('BodyAsked', fc.record({ session, sore: fc.boolean(), ill: fc.boolean(), unslept: fc.boolean() })),
  fact(
    'MixKept',
    fc.record({ shooter, mix: fc.constant([{ spot: 'top', shot: 'catch', weight: 1 } as const]) }),
  ),
  fact('OwnSpotPlaced', fc.record({ spot: fc.constantFrom('a', 'b'), x: small, y: small })),
  fact(
    'CardMade',
    fc.record({ card: fc.constantFrom('c', 'd'), name: fc.string(), stops: fc.constant([...STOPS]) }),
  ),
  fact('CardRemoved', fc.record({ card: fc.constantFrom('c', 'd') })),
  fact('SessionStarted', fc.record({ session, shooter, date: fc.constantFrom('2026-11-25', '2026-11-26') })),
  { weight: 4, arbitrary: fact('RoundStarted', started) },
  { weight: 10, arbitrary: fact('ShotTaken', shotTaken) },
  { weight: 4, arbitrary: fact('StopCounted', stopCounted) },
  { weight: 2, arbitrary: fact('TurnExpired', fc.record({ round: anyRound, stop: anyStop })) },
  {
    weight: 3,
    arbitrary: fact(
      'EntryRetracted',
      fc.record({ round: anyRound, entry: fc.nat({ max: 60 }).map((n) => `event ${n}`) }),
    ),
  },
  fact('RoundPaused', fc.record({ round: anyRound, why: fc.constantFrom('asked', 'hidden'), clockLeft })),
  fact('RoundResumed', aRound),
  {
    weight: 2,
    arbitrary: fact(
      'RoundEnded',
      fc.record({ round: anyRound, why: fc.constantFrom(...ENDINGS), clockLeft }),
    ),
  },
  { weight: 2, arbitrary: fact('RoundReopened', aRound) },
  fact('AfterRated', afterRated),
  fact('StakeSettled', aRound),
  fact('StakeReopened', aRound),
  fact('RoundImported', fromFile),
);

const log: fc.Arbitrary<LogEvent[]> = fc.array(anyFact, { maxLength: 60, size: 'max' }).map((facts) => {
  const newId = readableIds('event');
  return facts.flatMap((one, at) =>
    stamp([one], { at: START + 1000 * at, zone: 60, device: 'tablet', newId }),
  );
});

/** Every book on the way, the empty one first; each frozen before the next event. */
function everyBook(events: readonly LogEvent[]): Book[] {
  const books: Book[] = [frozen({ ...EMPTY_BOOK, shooters: new Map() })];
  for (const event of events) books.push(frozen(fold(books.at(-1) as Book, event)));
  return books;
}

const everyStep = (events: readonly LogEvent[]) => {
  const books = everyBook(events);
  return events.map((event, at) => ({ event, before: books[at] as Book, after: books[at + 1] as Book }));
};

const everyRound = ({ open, rounds }: Book) => [...rounds.values(), ...(open ? [open] : [])];

describe('any log whatever', () => {
  it('folds the same whole, event by event, and in two halves; no book is ever written to', () => {
    fc.assert(
      fc.property(log, fc.nat({ max: 60 }), (events, cut) => {
        const whole = foldAll(EMPTY_BOOK, events);
        expect(everyBook(events).at(-1)).toEqual(whole);
        const half = frozen(foldAll(EMPTY_BOOK, events.slice(0, cut)));
        expect(foldAll(half, events.slice(cut))).toEqual(whole);
        expect(EMPTY_BOOK.rounds.size + EMPTY_BOOK.shooters.size + EMPTY_BOOK.skipped).toBe(0);
      }),
      { numRuns: 300 },
    );
  });
  it('takes no more shots than the card has, and makes no more than shots', () => {
    fc.assert(
      fc.property(log, (events) => {
        for (const round of everyRound(foldAll(EMPTY_BOOK, events))) {
          for (const [at, stop] of round.stops.entries()) {
            expect(turnsUsed(round.entries, at)).toBeLessThanOrEqual(stop.attempts);
          }
          const { makes, attempts } = roundTally(round);
          expect(makes).toBeLessThanOrEqual(attempts);
          const counted = roundCells(round);
          expect(counted.reduce((sum, cell) => sum + cell.attempts, 0)).toBe(attempts);
          expect(counted.reduce((sum, cell) => sum + cell.makes, 0)).toBe(makes);
        }
      }),
      { numRuns: 300 },
    );
  });
  it('has at most one round on court, and none both on court and in the book', () => {
    fc.assert(
      fc.property(log, (events) => {
        for (const { open, rounds } of everyBook(events)) {
          expect(open?.state).not.toBe('ended');
          expect(rounds.has(open?.id ?? 'none')).toBe(false);
          expect([...rounds].every(([id, round]) => id === round.id)).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });
  it('never changes the entries of a round that is over: it is opened again first, or told anew by its file', () => {
    fc.assert(
      fc.property(log, (events) => {
        for (const { event, before, after } of everyStep(events)) {
          const told = event.type === 'RoundImported' ? event.body.round : null;
          const over = [...before.rounds.values()].filter(
            (round) => round.state === 'ended' && !(round.imported && round.id === told),
          );
          for (const round of over) {
            const next = everyRound(after).find(({ id }) => id === round.id);
            expect(next?.entries).toEqual(round.entries);
            expect(next?.state === 'ended' || event.type === 'RoundReopened').toBe(true);
          }
        }
      }),
      { numRuns: 300 },
    );
  });
  it('has the time on the clock from the last entry that tells one', () => {
    fc.assert(
      fc.property(log, (events) => {
        const entered = everyStep(events).filter(
          ({ before, after }) =>
            before.open?.id === after.open?.id && before.open?.entries.length !== after.open?.entries.length,
        );
        for (const { event, before, after } of entered) {
          const told = 'clockLeft' in event.body ? event.body.clockLeft : null;
          expect(after.open?.clockLeft).toBe(told ?? before.open?.clockLeft);
        }
      }),
      { numRuns: 300 },
    );
  });
  it('has a next turn exactly while turns are left', () => {
    fc.assert(
      fc.property(log, (events) => {
        for (const round of everyRound(foldAll(EMPTY_BOOK, events))) {
          const { used, all } = turnsOf(round);
          expect(nextTurn(round) === null).toBe(used === all);
        }
      }),
      { numRuns: 300 },
    );
  });
  it('tells a make and its taking back as nothing', () => {
    fc.assert(
      fc.property(log, anyRound, anyStop, fc.boolean(), (events, id, at, made) => {
        const before = foldAll(EMPTY_BOOK, events);
        const newId = readableIds('later');
        const stampOf = { at: START, zone: 60, device: 'tablet', newId };
        const [shot] = stamp(
          [{ type: 'ShotTaken', body: { round: id, stop: at, made, side: null } }],
          stampOf,
        );
        const [back] = stamp(
          [{ type: 'EntryRetracted', body: { round: id, entry: shot?.id ?? '' } }],
          stampOf,
        );
        const after = foldAll(
          before,
          [shot, back].filter((event) => event !== undefined),
        );
        expect({ ...after, skipped: 0 }).toEqual({ ...before, skipped: 0 });
      }),
      { numRuns: 300 },
    );
  });
});
