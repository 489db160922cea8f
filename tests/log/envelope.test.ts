import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { DamagedEventError, parseEvent } from '../../renderer/log/envelope.ts';
import { BODIES, type EventType } from '../../renderer/log/events.ts';
import { PRESSURE, started, STOPS } from './diary.ts';

const ENVELOPE = { id: '017f22e2-79b0-7cc3-98c4-dc0c0c07398f', at: 1, zone: 60, device: 'tablet', v: 1 };
const PERSON = { name: 'Ines', hand: 'right', rules: 'FIBA', units: 'metric' };
const CARD = { id: 'small', name: 'A small card', stops: STOPS };

/** A sound body of every event. */
const SOUND: Readonly<Record<EventType, Readonly<Record<string, unknown>>>> = {
  ShooterAdded: { shooter: 's', ...PERSON, demo: false },
  ShooterChanged: { shooter: 's', ...PERSON },
  ShooterRemoved: { shooter: 's' },
  AgeTold: { shooter: 's', under18: true },
  FavoursAllowed: { shooter: 's', allowed: true },
  MixKept: { shooter: 's', mix: [{ spot: 'top', shot: 'catch', weight: 40 }] },
  OwnSpotPlaced: { spot: 'Short corner', x: -5, y: 0.5 },
  CardMade: { card: 'c', name: 'Mine', stops: STOPS },
  CardRemoved: { card: 'c' },
  GameMade: {
    game: 'g',
    name: 'Five in a row',
    stops: STOPS,
    plan: { family: 'streak', row: 5, most: 60 },
    clock: { kind: 'round', seconds: 90 },
    crowd: true,
  },
  GameRemoved: { game: 'g' },
  SessionStarted: { session: 'v', shooter: 's', date: '2026-11-25' },
  BodyAsked: { session: 'v', sore: true, ill: false, unslept: false },
  PairTossed: {
    pair: 'p',
    session: 'v',
    shooter: 's',
    seed: 7,
    order: 'relaxed-first',
    card: CARD,
    entry: 'counts',
    pressure: PRESSURE,
  },
  RoundStarted: {
    ...started({ condition: 'pressured' }),
    pressure: { ...PRESSURE, rung: 'forfeit', doubles: { round: 'r', times: 1 } },
    pair: { id: 'p', place: 2 },
  },
  TurnPassed: { round: 'r' },
  ShotTaken: { round: 'r', stop: 0, made: true, side: null },
  StopCounted: { round: 'r', stop: 0, makes: 3, attempts: 5 },
  TurnExpired: { round: 'r', stop: 0 },
  EntryRetracted: { round: 'r', entry: 'e' },
  RoundPaused: { round: 'r', why: 'asked', clockLeft: 12.5 },
  RoundResumed: { round: 'r' },
  RoundEnded: { round: 'r', why: 'played-out', clockLeft: null },
  RoundReopened: { round: 'r' },
  AfterRated: { round: 'r', nerves: 7, effort: null, note: '' },
  StakeSettled: { round: 'r' },
  StakeReopened: { round: 'r' },
  RoundImported: {
    round: 'r',
    shooter: 's',
    date: '2026-11-25',
    session: '1',
    label: '1',
    condition: 'relaxed',
    game: '',
    cells: [{ spot: 'top', shot: 'catch', makes: 1, attempts: 2 }],
    first: null,
    nerves: 6.5,
    note: '',
  },
};
const TYPES = Object.keys(BODIES) as EventType[];

describe.each(TYPES)('%s', (type) => {
  const body = SOUND[type];

  it('is read as it was written', () => {
    const stored: unknown = JSON.parse(JSON.stringify({ ...ENVELOPE, type, body }));
    expect(parseEvent(stored)).toEqual({ known: true, event: stored });
  });
  it.each(Object.keys(body))('is refused where %s is missing or of the wrong kind, and says so', (field) => {
    const { [field]: _gone, ...without } = body;
    for (const broken of [without, { ...body, [field]: { nonsense: true } }]) {
      const read = () => parseEvent({ ...ENVELOPE, type, body: broken });
      expect(read).toThrow(DamagedEventError);
      expect(read).toThrow(new RegExp(`${ENVELOPE.id} \\(${type}\\).*${field}`));
    }
  });
});

describe('a round of a group', () => {
  const round = (group: unknown) => ({
    ...ENVELOPE,
    type: 'RoundStarted',
    body: { ...started({}), group },
  });

  it.each([{ id: 'g', place: 2, turns: 'shot' }, { id: 'g', place: 8, turns: 'game', coin: true }, null])(
    'is read as it was written: %j',
    (group) => {
      expect(parseEvent(round(group))).toMatchObject({ known: true, event: { body: { group } } });
    },
  );
  it.each([
    { id: 'g', place: 0, turns: 'shot' },
    { id: 'g', place: 1, turns: 'whenever' },
    { id: 'g', place: 1, turns: 'stop', coin: 'heads' },
  ])('is refused where it cannot be: %j', (group) => {
    expect(() => parseEvent(round(group))).toThrow(/group/);
  });
});

describe('a mix that is kept', () => {
  const kept = (pressure: unknown) => ({
    ...ENVELOPE,
    type: 'MixKept',
    body: { ...SOUND.MixKept, pressure },
  });

  it.each([
    { dose: 0.5, ingredients: {} },
    { dose: 1, ingredients: { clock: 1, crowd: 0.25 } },
  ])('has the pressure that was usual: %j', (pressure) => {
    expect(parseEvent(kept(pressure))).toMatchObject({ known: true, event: { body: { pressure } } });
  });
  it.each([
    null,
    { dose: 1.1, ingredients: {} },
    { dose: 0.5 },
    { dose: 0.5, ingredients: { rain: 1 } },
    { dose: 0.5, ingredients: { clock: -0.1 } },
  ])('is refused with a pressure that cannot be: %j', (pressure) => {
    expect(() => parseEvent(kept(pressure))).toThrow(/pressure/);
  });
});

describe('what cannot be', () => {
  it.each<readonly [string, EventType, object, RegExp]>([
    ['more makes than attempts', 'StopCounted', { makes: 6 }, /more makes than attempts/],
    ['half a shot', 'StopCounted', { makes: 2.5 }, /makes/],
    ['a stop before the first', 'ShotTaken', { stop: -1 }, /stop/],
    ['nerves of eleven', 'AfterRated', { nerves: 11 }, /nerves/],
    ['a day that is not ISO 8601', 'SessionStarted', { date: '25.11.2026' }, /date/],
    ['a day that is on no calendar', 'SessionStarted', { date: '2026-02-30' }, /date/],
    ['a card without a stop', 'CardMade', { stops: [] }, /stops/],
    [
      'a stop of no attempts',
      'CardMade',
      { stops: [{ spot: 'top', shot: 'catch', attempts: 0 }] },
      /stops\.0\.attempts/,
    ],
    ['an unknown rule set', 'ShooterAdded', { rules: 'STREET' }, /rules/],
    ['a nameless shooter', 'ShooterAdded', { name: '' }, /name/],
    ['a seed beyond 32 bits', 'PairTossed', { seed: 2 ** 32 }, /seed/],
    [
      'a certain chance of more than 1',
      'PairTossed',
      { pressure: { ...PRESSURE, mark: { makes: 1, chance: 1.1 } } },
      /chance/,
    ],
    ['a place that is no number', 'OwnSpotPlaced', { x: Number.NaN }, /x/],
    ['a place beyond all courts', 'OwnSpotPlaced', { y: Number.POSITIVE_INFINITY }, /y/],
  ])('%s is refused', (_what, type, change, reason) => {
    expect(() => parseEvent({ ...ENVELOPE, type, body: { ...SOUND[type], ...change } })).toThrow(reason);
  });
  it.each([
    ['id', { id: 'not a UUID' }],
    ['at', { at: 'yesterday' }],
    ['zone', { zone: 1.5 }],
    ['device', { device: null }],
    ['v', { v: 0 }],
    ['type', { type: undefined }],
  ])('an envelope with a broken %s is refused', (field, change) => {
    const stored = { ...ENVELOPE, type: 'RoundResumed', body: SOUND.RoundResumed, ...change };
    expect(() => parseEvent(stored)).toThrow(new RegExp(`An event cannot be read: ${field} `));
  });
  it('anything at all is read or refused, and nothing else', () => {
    fc.assert(
      fc.property(fc.anything(), fc.constantFrom(...TYPES), fc.anything(), (stored, type, body) => {
        for (const one of [stored, { ...ENVELOPE, type, body }]) {
          let failed: unknown = null;
          try {
            parseEvent(one);
          } catch (error) {
            failed = error;
          }
          expect(failed === null || failed instanceof DamagedEventError).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe('what a later version wrote', () => {
  it.each([
    ['an unknown event', { type: 'HeartRateMeasured', v: 1 }],
    ['a later version of a known event', { type: 'ShotTaken', v: 2 }],
    ['an event named like a part of every object', { type: 'constructor', v: 1 }],
  ])('%s is kept as it is', (_what, change) => {
    const stored = { ...ENVELOPE, ...change, body: { beats: [140, 152] } };
    expect(parseEvent(stored)).toEqual({ known: false, event: stored });
  });
});
