import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { CATALOGUE } from '../../renderer/games/catalogue.ts';
import type { OwnGame } from '../../renderer/log/book.ts';
import { LONGEST_FILE, readGameFile, writeGameFile } from '../../renderer/log/gameFile.ts';
import { LONGEST_GAME_NAME } from '../../renderer/pressure/gamePlan.ts';
import { anyCard, anyPlan } from '../games/anyPlan.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

const SPOTS = new Map([
  ['My spot', { x: -5, y: 6 }],
  ['Elsewhere', { x: 1, y: 2 }],
]);
const MINE: Omit<OwnGame, 'id'> = {
  name: 'Five from the bleachers',
  stops: [{ spot: 'My spot', shot: 'catch', attempts: 5 }],
  plan: { family: 'reach', needed: 3 },
  clock: { kind: 'round', seconds: 45 },
  crowd: true,
};
const text = writeGameFile(MINE, SPOTS);
const file = JSON.parse(text) as { [key: string]: Json };
const changed = (change: object): string => JSON.stringify({ ...file, ...change });
const reason = (one: string): string => {
  const reading = readGameFile(one);
  return reading.sound ? 'taken' : reading.reason;
};

describe('a game file', () => {
  it('is JSON with a kind, a version and the spots of one’s own that are shot from', () => {
    expect(file).toEqual({
      kind: 'loud-gym-game',
      version: 1,
      ...MINE,
      spots: [{ spot: 'My spot', x: -5, y: 6 }],
    });
  });

  it('is read as it was written, whatever the game', () => {
    const name = fc.stringMatching(/^[\p{L}\p{N}!'-]([\p{L}\p{N} !'-]{0,40}[\p{L}\p{N}!'-])?$/u);
    const clock = fc.option(
      fc.record({
        kind: fc.constantFrom('shot' as const, 'round' as const),
        seconds: fc.integer({ min: 1, max: 900 }),
      }),
    );
    fc.assert(
      fc.property(name, anyCard, anyPlan, clock, fc.boolean(), (called, stops, plan, time, crowd) => {
        const game = { name: called, stops, plan, clock: time, crowd };
        const reading = readGameFile(writeGameFile(game, SPOTS));
        const normal = called.normalize('NFC').replaceAll(/\s+/g, ' ');
        expect(reading).toMatchObject({ sound: true, game: { ...game, name: normal } });
      }),
      { numRuns: 200 },
    );
  });

  it('may say more than is known', () => {
    expect(readGameFile(changed({ colour: 'blue' }))).toEqual(readGameFile(text));
  });
});

describe('a file that is no game is refused in a sentence', () => {
  it.each([
    ['', /not a game file, or it is damaged/],
    ['{"kind": "loud-gym-game"', /damaged/],
    ['[]', /not a game of Loud Gym/],
    ['null', /not a game of Loud Gym/],
    ['{"name": "x"}', /not a game of Loud Gym/],
    [changed({ kind: 'shopping list' }), /not a game of Loud Gym/],
    [changed({ version: '1' }), /not a game of Loud Gym/],
    [changed({ version: 0 }), /not a game of Loud Gym/],
    [changed({ version: 2 }), /saved by a newer Loud Gym\. Update the app/],
    // What a later version holds is not looked at.
    [JSON.stringify({ kind: 'loud-gym-game', version: 7, everything: 'else' }), /newer Loud Gym/],
    [changed({ padding: 'x'.repeat(LONGEST_FILE) }), /larger than any game/],
    [changed({ name: 'x'.repeat(LONGEST_GAME_NAME + 1) }), /\(name\)/],
    [changed({ stops: [] }), /\(stops\)/],
    [changed({ clock: { kind: 'round', seconds: 0 } }), /\(clock\.seconds\)/],
    [changed({ plan: { family: 'roulette' } }), /\(plan\.family\)/],
    [changed({ spots: [{ spot: 'My spot', x: 1e9, y: 0 }] }), /\(spots\.0\.x\)/],
  ])('%#', (one, words) => {
    expect(reason(one)).toMatch(words);
  });

  /** Every place in a file, as the steps that lead there. */
  function* places(
    value: Json,
    path: readonly (string | number)[] = [],
  ): Generator<readonly (string | number)[]> {
    if (path.length > 0) yield path;
    if (value === null || typeof value !== 'object') return;
    for (const [key, inside] of Object.entries(value)) {
      yield* places(inside, [...path, Array.isArray(value) ? Number(key) : key]);
    }
  }

  function replaced(value: Json, [step, ...rest]: readonly (string | number)[], by: Json | undefined): Json {
    const copy = structuredClone(value) as Record<string | number, Json>;
    if (step === undefined) return copy;
    if (rest.length > 0) copy[step] = replaced(copy[step] ?? null, rest, by);
    else if (by === undefined) Reflect.deleteProperty(copy, step);
    else copy[step] = by;
    return copy;
  }

  it.each(CATALOGUE.map((game) => [game.id, game] as const))(
    '%s with any field missing or nonsense',
    (_, game) => {
      const whole = JSON.parse(writeGameFile(game, SPOTS)) as Json;
      for (const path of places(whole)) {
        // A hole in a list is nothing.
        const changes: (Json | undefined)[] = [
          { nonsense: true },
          ...(typeof path.at(-1) === 'number' ? [null] : [undefined]),
        ];
        for (const by of changes) {
          const broken = JSON.stringify(replaced(whole, path, by));
          expect(readGameFile(broken).sound, `${path.join('.')} ${JSON.stringify(by)}`).toBe(false);
        }
      }
    },
  );

  it('anything at all is read or refused, and nothing else', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), fc.json(), (raw, inside) => {
        const mixed = `{"kind":"loud-gym-game","version":1,"name":${inside},"stops":${inside},"plan":${inside}}`;
        for (const one of [raw, mixed]) expect(readGameFile(one)).toHaveProperty('sound', false);
      }),
      { numRuns: 300 },
    );
  });
});

describe('names that would do harm', () => {
  it.each([
    ['<img src=x onerror=alert(1)>', '<img src=x onerror=alert(1)>'],
    ['ten\u202Ewor a ni', 'ten wor a ni'],
    ['  a\u0000b\nc\u200B  ', 'a b c'],
    ['=1+1', '=1+1'],
    ['__proto__', '__proto__'],
  ])('%j is read as %j: words, and nothing else', (name, read) => {
    const reading = readGameFile(changed({ name }));
    expect(reading).toMatchObject({ sound: true, game: { name: read } });
  });
  it.each(['', '   ', '\u200B\u200B', '\uD800'])('%j is no name', (name) => {
    expect(reason(changed({ name }))).toMatch(/\(name\)/);
    expect(reason(changed({ stops: [{ spot: name, shot: 'catch', attempts: 5 }] }))).toMatch(/\(stops/);
  });
  it('leave objects as they are', () => {
    const hostile = text.replace('"crowd": true', '"crowd": true, "__proto__": { "sound": true }');
    expect(readGameFile(hostile).sound).toBe(true);
    expect(({} as { sound?: boolean }).sound).toBeUndefined();
  });
});
