import { ARC, type BuiltInGame, freeThrows, from, LOUD, pullUps } from './builtIn.ts';

/** Games that take a while: climbs, and duels with an opponent who is drawn. */
export const LONG_GAMES: readonly BuiltInGame[] = [
  {
    id: 'climb-line',
    name: 'Two by two',
    words:
      'Four steps of two free throws, both to be made; miss one and you start again at the bottom, 60 shots at most.',
    stops: Array.from({ length: 4 }, () => freeThrows(2)).flat(),
    plan: { family: 'climb', makes: [2, 2, 2, 2], back: 3, most: 60 },
    ...LOUD,
  },
  {
    id: 'climb-out',
    name: 'From the line out',
    words: 'Line, elbows, top: two of three lead on, less than that one step back, 60 shots at most.',
    stops: [...freeThrows(3), ...pullUps(3), ...from(['top'], 'catch', 3)],
    plan: { family: 'climb', makes: [2, 2, 2, 2], back: 1, most: 60 },
    ...LOUD,
  },
  {
    id: 'climb-arc',
    name: 'Around the arc',
    words:
      'Corner to corner in five steps: one of two leads on, two misses send you back to the start, 50 shots at most.',
    stops: from(ARC, 'catch', 2),
    plan: { family: 'climb', makes: [1, 1, 1, 1, 1], back: 4, most: 50 },
    ...LOUD,
  },
  {
    id: 'duel-line',
    name: 'Against seven of ten at the line',
    words: 'Ten free throws each, shot for shot, against an opponent who makes seven in ten; level goes on.',
    stops: freeThrows(10),
    plan: { family: 'duel', against: { kind: 'drawn', rate: 0.7 }, headStart: 0, extraPairs: 5 },
    ...LOUD,
  },
  {
    id: 'duel-arc',
    name: 'Against two of five around the arc',
    words:
      'Two shots from each spot, shot for shot, against an opponent who makes two in five; level goes on.',
    stops: from(ARC, 'catch', 2),
    plan: { family: 'duel', against: { kind: 'drawn', rate: 0.4 }, headStart: 0, extraPairs: 5 },
    ...LOUD,
  },
];
