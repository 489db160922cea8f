import { describe, expect, it } from 'vitest';

import { EMPTY_BOOK, type Book } from '../../renderer/log/book.ts';
import type { Body } from '../../renderer/log/events.ts';
import { foldParsed } from '../../renderer/log/fold.ts';
import { diary, onCourt, PRESSURE, START, STOPS, type Diary } from './diary.ts';

const TOBI = { shooter: 'tobi', name: 'Tobi', hand: 'left', rules: 'NFHS', units: 'feet' } as const;
const GAME: Body<'GameMade'> = {
  game: 'five',
  name: 'Five in a row',
  stops: [...STOPS],
  plan: { family: 'streak', row: 5, most: 60 },
  clock: null,
  crowd: true,
};
const CARD = { card: 'mine', name: 'Mine', stops: [...STOPS] };

const INES_KNOWN = {
  id: 'ines',
  name: 'Ines',
  hand: 'right',
  rules: 'FIBA',
  units: 'metric',
  demo: false,
} as const;
const TOBI_KNOWN = { name: 'Tobi', hand: 'left', rules: 'NFHS', units: 'feet', demo: false } as const;

/** What one event does to a book with a shooter, a visit and an open round. */
const EFFECTS: readonly (readonly [
  what: string,
  write: (log: Diary) => unknown,
  see: (book: Book) => unknown,
  seen: unknown,
])[] = [
  [
    'a shooter is added',
    (log) => log.write('ShooterAdded', { ...TOBI, demo: true }),
    (book) => book.shooters.get('tobi'),
    { id: 'tobi', name: 'Tobi', hand: 'left', rules: 'NFHS', units: 'feet', demo: true },
  ],
  [
    'a shooter is changed, and stays who they are',
    (log) => log.write('ShooterChanged', { ...TOBI, shooter: 'ines' }),
    (book) => book.shooters.get('ines'),
    { id: 'ines', name: 'Tobi', hand: 'left', rules: 'NFHS', units: 'feet', demo: false },
  ],
  [
    'a shooter is taken off the screens, and the log keeps their rounds',
    (log) => log.write('ShooterRemoved', { shooter: 'ines' }),
    ({ removedShooters, shooters, rounds, open }) => [
      removedShooters.has('ines'),
      shooters.size,
      [...rounds.keys()],
      open,
    ],
    [true, 1, ['round 1'], null],
  ],
  [
    'a mix is kept with the pressure that is usual, the latest stands',
    (log) => {
      const mix = [{ spot: 'top', shot: 'catch', weight: 40 }] as const;
      log.write('MixKept', { shooter: 'ines', mix: [{ ...mix[0], weight: 1 }] });
      log.write('MixKept', { shooter: 'ines', mix, pressure: { dose: 0.4, ingredients: { clock: 1 } } });
    },
    (book) => book.mixes.get('ines'),
    {
      mix: [{ spot: 'top', shot: 'catch', weight: 40 }],
      pressure: { dose: 0.4, ingredients: { clock: 1 } },
      at: START + 4000,
    },
  ],
  [
    'a shooter’s age is told',
    (log) => log.write('AgeTold', { shooter: 'ines', under18: true }),
    (book) => [book.shooters.get('ines')?.under18, book.shooters.get('ines')?.favoursSince],
    [true, undefined],
  ],
  [
    'an adult allows favours, and it is kept since when',
    (log) => {
      log.write('AgeTold', { shooter: 'ines', under18: true });
      log.write('FavoursAllowed', { shooter: 'ines', allowed: true });
      log.write('AgeTold', { shooter: 'ines', under18: true });
    },
    (book) => book.shooters.get('ines'),
    { ...INES_KNOWN, under18: true, favoursSince: START + 4000 },
  ],
  [
    'an adult takes favours back',
    (log) => {
      log.write('AgeTold', { shooter: 'ines', under18: true });
      log.write('FavoursAllowed', { shooter: 'ines', allowed: true });
      log.write('FavoursAllowed', { shooter: 'ines', allowed: false });
    },
    (book) => book.shooters.get('ines'),
    { ...INES_KNOWN, under18: true },
  ],
  [
    'who comes of age needs no favours allowed',
    (log) => {
      log.write('AgeTold', { shooter: 'ines', under18: true });
      log.write('FavoursAllowed', { shooter: 'ines', allowed: true });
      log.write('AgeTold', { shooter: 'ines', under18: false });
    },
    (book) => book.shooters.get('ines'),
    { ...INES_KNOWN, under18: false },
  ],
  [
    'age and leave outlive a change of name',
    (log) => {
      log.write('AgeTold', { shooter: 'ines', under18: true });
      log.write('ShooterChanged', { ...TOBI, shooter: 'ines' });
    },
    (book) => book.shooters.get('ines'),
    { ...TOBI_KNOWN, id: 'ines', under18: true },
  ],
  [
    'the latest word on the body stands for the visit',
    (log) => {
      log.write('BodyAsked', { session: 'visit 1', sore: true, ill: false, unslept: false });
      log.write('BodyAsked', { session: 'visit 1', sore: false, ill: false, unslept: true });
    },
    (book) => book.sessions.get('visit 1')?.body,
    { sore: false, ill: false, unslept: true, at: START + 4000 },
  ],
  [
    'a spot is put on the floor',
    (log) => log.write('OwnSpotPlaced', { spot: 'Short corner', x: -5, y: 0.5 }),
    (book) => book.ownSpots.get('Short corner'),
    { x: -5, y: 0.5 },
  ],
  [
    'a spot is moved',
    (log) => {
      log.write('OwnSpotPlaced', { spot: 'Short corner', x: -5, y: 0.5 });
      log.write('OwnSpotPlaced', { spot: 'Short corner', x: -4, y: 0.5 });
    },
    (book) => [...book.ownSpots],
    [['Short corner', { x: -4, y: 0.5 }]],
  ],
  [
    'a card is made',
    (log) => log.write('CardMade', CARD),
    (book) => book.cards.get('mine'),
    { id: 'mine', name: 'Mine', stops: STOPS },
  ],
  [
    'a card is taken away',
    (log) => {
      log.write('CardMade', CARD);
      log.write('CardRemoved', { card: 'mine' });
    },
    (book) => book.cards.size,
    0,
  ],
  [
    'a game is made',
    (log) => log.write('GameMade', GAME),
    (book) => [...book.games],
    [
      [
        'five',
        {
          id: 'five',
          name: 'Five in a row',
          stops: STOPS,
          plan: { family: 'streak', row: 5, most: 60 },
          clock: null,
          crowd: true,
        },
      ],
    ],
  ],
  [
    'a game is changed',
    (log) => {
      log.write('GameMade', GAME);
      log.write('GameMade', { ...GAME, name: 'Five, loud' });
    },
    (book) => [...book.games.values()].map(({ name }) => name),
    ['Five, loud'],
  ],
  [
    'a game is taken away',
    (log) => {
      log.write('GameMade', GAME);
      log.write('GameRemoved', { game: 'five' });
    },
    (book) => book.games.size,
    0,
  ],
  [
    'a second visit of the day is the day’s second',
    (log) => log.write('SessionStarted', { session: 'visit 2', shooter: 'ines', date: '2026-11-25' }),
    (book) => [...book.sessions.values()].map(({ label }) => label),
    ['2026-11-25/1', '2026-11-25/2'],
  ],
  [
    'another shooter’s visit is their own first',
    (log) => log.write('SessionStarted', { session: 'visit 2', shooter: 'tobi', date: '2026-11-25' }),
    (book) => book.sessions.get('visit 2')?.label,
    '2026-11-25/1',
  ],
  [
    'a pair is laid down whole',
    (log) =>
      log.write('PairTossed', {
        pair: 'pair 1',
        session: 'visit 1',
        shooter: 'ines',
        seed: 7,
        order: 'pressured-first',
        card: { id: 'small', name: 'A small card', stops: [...STOPS] },
        entry: 'counts',
        pressure: { ...PRESSURE, ingredients: [...PRESSURE.ingredients] },
      }),
    (book) => book.pairs.get('pair 1'),
    {
      id: 'pair 1',
      session: 'visit 1',
      shooter: 'ines',
      seed: 7,
      order: 'pressured-first',
      card: { id: 'small', name: 'A small card', stops: STOPS },
      entry: 'counts',
      pressure: PRESSURE,
    },
  ],
  [
    'a round carries its visit’s day and its number in it',
    () => undefined,
    ({ open }) => [open?.date, open?.label, open?.state, open?.game, open?.imported],
    ['2026-11-25', '1', 'playing', 'A small card', false],
  ],
];

describe('an event', () => {
  it.each(EFFECTS)('%s', (_what, write, see, seen) => {
    const log = onCourt();
    write(log);
    const book = log.book();
    expect(see(book)).toEqual(seen);
    expect(book.skipped).toBe(0);
  });
});

describe('an event that fits nothing is skipped and counted', () => {
  it.each<readonly [string, (log: Diary) => unknown]>([
    ['a change of nobody', (log) => log.write('ShooterChanged', TOBI)],
    ['a shot in no round', (log) => log.write('ShotTaken', { round: 'no', stop: 0, made: true, side: null })],
    [
      'the end of no round',
      (log) => log.write('RoundEnded', { round: 'no', why: 'stopped', clockLeft: null }),
    ],
    ['the age of nobody', (log) => log.write('AgeTold', { shooter: 'tobi', under18: true })],
    ['leave for nobody', (log) => log.write('FavoursAllowed', { shooter: 'tobi', allowed: true })],
    [
      'the body on no visit',
      (log) => log.write('BodyAsked', { session: 'no', sore: true, ill: false, unslept: false }),
    ],
    ['settling in no round', (log) => log.write('StakeSettled', { round: 'no' })],
  ])('%s', (_what, write) => {
    const log = onCourt();
    const before = log.book();
    write(log);
    expect(log.book()).toEqual({ ...before, skipped: 1 });
  });
});

describe('the log of a later version', () => {
  it('is kept, and what is not known is skipped and counted', () => {
    const log = diary();
    const added = log.write('ShooterAdded', { ...TOBI, demo: false });
    const later = { ...added, type: 'HeartRateMeasured', body: { beats: 140 } };
    const book = foldParsed(EMPTY_BOOK, [
      { known: true, event: added },
      { known: false, event: later },
    ]);
    expect(book.shooters.size).toBe(1);
    expect(book.skipped).toBe(1);
  });
});
