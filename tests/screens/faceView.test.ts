import { describe, expect, it } from 'vitest';

import { faceOf, type Face } from '../../renderer/games/face.ts';
import { othersIn } from '../../renderer/games/gameOn.ts';
import type { Stop } from '../../renderer/court/cards.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { faceView } from '../../renderer/screens/court/faceView.ts';
import { goalWords, outcomeWords, standingWords } from '../../renderer/screens/gameWords.ts';
import { gameSetup, groupOf, shoot } from '../games/onCourt.ts';
import { onCourt } from '../log/diary.ts';

/* What is read at eight metres, and what is said afterwards, family by family. */

const LINE: readonly Stop[] = [{ spot: 'free-throw', shot: 'free-throw', attempts: 10 }];
const RACKS: readonly Stop[] = (['left-wing', 'top'] as const).map((spot) => ({
  spot,
  shot: 'catch',
  attempts: 3,
}));

/** A game after some shots: `o` a make, `x` a miss. */
function face(plan: GamePlan, shots: string, card = LINE): Face {
  const log = onCourt(gameSetup(plan, { card }));
  for (const shot of shots) shoot(log, shot === 'o');
  const book = log.book();
  const round = book.open ?? book.rounds.get('round 1');
  const seen = round && faceOf(round);
  if (!seen) throw new Error('a game');
  return seen;
}

/** Figures as they stand: `2 best run`. */
const figures = (seen: Face) => faceView(seen).figures.map(({ value, words }) => `${value} ${words}`);

const RACE: GamePlan = { family: 'race', to: 10, up: 1, down: 2, floor: null, lost: -3, most: 30 };
const TRIPS: GamePlan = {
  family: 'trips',
  kind: 'one-and-one',
  trips: 3,
  needed: 4,
  scene: { down: 1, left: 3 },
};

describe('the figures', () => {
  it.each<[string, GamePlan, string, string[]]>([
    ['reach', { family: 'reach', needed: 6 }, 'oox', ['4 needed of 7 left']],
    ['reach, reached', { family: 'reach', needed: 2 }, 'oox', ['0 goal reached']],
    ['reach, lost', { family: 'reach', needed: 9 }, 'xxo', ['8 needed, 7 left: out of reach']],
    ['last shot', { family: 'last shot', needed: 3, from: 2, to: 5 }, 'ox', ['2 needed of 8 left']],
    [
      'streak',
      { family: 'streak', row: 5, most: 11 },
      'ooxoooxooo'.slice(0, 10),
      ['3 in a row, of 5', '3 best run', '1 shot left'],
    ],
    ['race', RACE, 'xo', ['−1 of 10 points', '−3 lost there', '28 shots left']],
    ['lives', { family: 'lives', needed: 4, lives: 2 }, 'ooox', ['1 make needed', '1 life left']],
    ['trips', TRIPS, 'oo', ['2 points needed', '2 trip of 3', '1 must go in']],
    ['trips, second shot', TRIPS, 'ooo', ['1 point needed', '2 trip of 3', '2 shot of 2']],
  ])('of %s', (_what, plan, shots, wanted) => {
    expect(figures(face(plan, shots))).toEqual(wanted);
  });
  it('of racks, of a climb and of a duel', () => {
    expect(figures(face({ family: 'racks', double: 'last', needed: 6 }, 'oo', RACKS))).toEqual([
      '4 points needed of 6 left',
    ]);
    expect(figures(face({ family: 'climb', makes: [2, 2], back: 1, most: 20 }, 'ooo', RACKS))).toEqual([
      '2 step of 2',
      '1/2 made on this step',
      '2 shots left here',
    ]);
    const sure = (rate: number): GamePlan => ({
      family: 'duel',
      against: { kind: 'drawn', rate },
      headStart: 0,
      extraPairs: 2,
    });
    expect(figures(face(sure(0), 'oox'))).toEqual(['2 ahead', '7 shots left']);
    expect(figures(face(sure(1), 'oox'))).toEqual(['1 behind', '7 shots left']);
    expect(figures(face(sure(1), 'oooooooooo'))).toEqual(['0 level', '1 extra pair of 2']);
  });
  it('of lives are told by discs too', () => {
    const [, lives] = faceView(face({ family: 'lives', needed: 4, lives: 3 }, 'ox')).figures;
    expect(lives?.discs).toEqual({ filled: 2, of: 3 });
  });
});

describe('the next shot', () => {
  it.each<[GamePlan, string, string]>([
    [{ family: 'reach', needed: 6 }, 'oox', 'shot 4 of 10'],
    [{ family: 'streak', row: 5, most: 60 }, 'xxxxxxxxxxxxxxxx', 'shot 17, at most 60'],
    [{ family: 'lives', needed: 4, lives: 2 }, 'o', 'shot 2, at most 5'],
    [TRIPS, 'ooo', 'shot 4, at most 6'],
  ])('of %j after %j is %s', (plan, shots, words) => {
    expect(faceView(face(plan, shots)).shot).toBe(words);
  });
  it('of a rack is a ball, and of an undecided duel an extra pair', () => {
    const racks: GamePlan = { family: 'racks', double: 'none', needed: 2 };
    expect(faceView(face(racks, 'oooo', RACKS)).shot).toBe('rack 2 of 2, ball 2 of 3');
    const duel: GamePlan = {
      family: 'duel',
      against: { kind: 'drawn', rate: 1 },
      headStart: 0,
      extraPairs: 1,
    };
    expect(faceView(face(duel, 'ooo')).shot).toBe('shot 4 of 10');
    expect(faceView(face(duel, 'oooooooooo')).shot).toBe('an extra pair');
  });
});

describe('the words that must be seen first', () => {
  it('announce a double ball before it is shot, and keep their place beside it', () => {
    const racks: GamePlan = { family: 'racks', double: 'last', needed: 4 };
    const loud = (shots: string) => faceView(face(racks, shots, RACKS)).loud;
    expect(loud('o')).toEqual({ words: 'Single', strong: false });
    expect(loud('ox')).toEqual({ words: 'Double', strong: true });
    expect(faceView(face({ ...racks, double: 'none' }, 'ox', RACKS)).loud).toBeNull();
  });
  it('are the scene of a trip, which goes with its makes and begins anew', () => {
    const scene = (shots: string) => faceView(face(TRIPS, shots)).loud?.words;
    expect([scene(''), scene('o'), scene('oo'), scene('ox')]).toEqual([
      'Down one, 0:03',
      'Level, 0:03',
      'Down one, 0:03',
      'Down one, 0:03',
    ]);
    const late = { family: 'trips', kind: 'three shots', trips: 1, needed: 3 } as const;
    const words = (down: number, left: number, shots: string) =>
      faceView(face({ ...late, scene: { down, left } }, shots)).loud?.words;
    expect(words(2, 0.4, '')).toBe('Down two, 0.4');
    expect(words(0, 65, 'o')).toBe('Up one, 1:05');
    expect(words(4, 0, '')).toBe('Down 4, 0.0');
  });
});

describe('what is said of a game', () => {
  it.each<[GamePlan, string]>([
    [{ family: 'reach', needed: 6 }, 'Make 6 of 10 to win'],
    [{ family: 'streak', row: 5, most: 60 }, 'Make 5 in a row to win, within 60 shots'],
    [RACE, 'A make brings 1, a miss takes 2: 10 wins, −3 loses, within 30 shots'],
    [{ family: 'lives', needed: 4, lives: 1 }, 'Make 4 before 1 miss to win'],
    [TRIPS, '4 points in 3 trips to the line to win'],
    [{ family: 'climb', makes: [2], back: 1, most: 20 }, 'Climb 1 step to win, within 20 shots'],
    [
      { family: 'duel', against: { kind: 'shooter' }, headStart: -2, extraPairs: 3 },
      'Shot for shot, 10 each: more makes win; the other starts 2 ahead',
    ],
    [
      { family: 'duel', against: { kind: 'drawn', rate: 0.5 }, headStart: 1, extraPairs: 3 },
      'Shot for shot, 10 each: more makes win; you start 1 ahead',
    ],
  ])('before it: %j', (plan, words) => {
    expect(goalWords(plan, LINE)).toBe(words);
  });
  it.each<[GamePlan, string, string, string]>([
    [{ family: 'reach', needed: 1 }, 'oxxxxxxxxx', '1 made, 1 needed', 'won, 1 of 1 needed'],
    [{ family: 'streak', row: 4, most: 6 }, 'oooxoo', 'best run 3 of 4', 'out, best run 3 of 4'],
    [{ family: 'lives', needed: 2, lives: 2 }, 'oxo', '2 made with 1 life left', 'won, 2 of 2, 1 life'],
    [{ family: 'lives', needed: 9, lives: 2 }, 'oxx', '1 made of 9, no life left', 'out, 1 of 9, 0 lives'],
    [TRIPS, 'xxx', '0 points, 4 needed', 'out, 0 of 4 points'],
    [RACE, 'xx', '−4 points, 10 needed', 'out, −4 of 10 points'],
  ])('after %j with %j: %s', (plan, shots, outcome, standing) => {
    const seen = face(plan, shots);
    expect(outcomeWords(seen)).toBe(outcome);
    expect(standingWords(seen)).toBe(standing);
  });
  it('in the middle of it', () => {
    expect(standingWords(face({ family: 'streak', row: 5, most: 60 }, 'oxoo'))).toBe('2 in a row, best 2');
    expect(standingWords(face({ family: 'climb', makes: [2, 2], back: 1, most: 20 }, 'oo', RACKS))).toBe(
      'step 2 of 2',
    );
  });
  it('of a duel by both, the head start told', () => {
    const plan: GamePlan = { family: 'duel', against: { kind: 'shooter' }, headStart: 1, extraPairs: 0 };
    const log = groupOf(plan, 'shot', ['ines', 'tobi'], {
      card: [{ spot: 'top', shot: 'catch', attempts: 2 }],
    });
    for (const made of [true, false, true]) shoot(log, made);
    const book = log.book();
    const words = [...book.rounds.values()].map((round) => {
      const seen = faceOf(round, othersIn(book, round));
      return [round.shooter, seen && outcomeWords(seen)];
    });
    expect(Object.fromEntries(words)).toEqual({
      ines: '2 (1 from the start) to 0',
      tobi: '0 to 2 (1 from the start)',
    });
  });
});
