import { SHOT_WORDS, SHOT_KINDS, SPOTS } from '../../court/spots.ts';
import type { Column } from '../../log/csvColumns.ts';

interface Words {
  /** What the column says. */
  readonly what: string;
  /** What may stand in it. */
  readonly may: string;
}

/** The columns of a record file in plain words. */
export const COLUMN_WORDS: Readonly<Record<Column, Words>> = {
  date: { what: 'The day', may: 'Year-month-day: 2026-11-25' },
  session: { what: 'Which visit to the court', may: 'A number or a word: 1, evening' },
  round: { what: 'Which round of that visit', may: 'A number or a word: 1, 2, 3' },
  condition: {
    what: 'With or without pressure, fixed before the first shot',
    may: 'relaxed or pressured',
  },
  game: { what: 'What was played', may: 'Your own words, or empty' },
  spot: {
    what: 'Where from; left and right as you face the basket',
    may: `${SPOTS.join(', ')}, or a spot of your own`,
  },
  shot: {
    what: 'How the shot came',
    may: SHOT_KINDS.map((kind) =>
      SHOT_WORDS[kind].replace(' ', '-') === kind ? kind : `${kind} = ${SHOT_WORDS[kind]}`,
    ).join('; '),
  },
  first: {
    what: 'Shots you had already taken that visit, when the round began',
    may: 'A whole number; empty if nobody counted',
  },
  makes: { what: 'How many went in', may: 'A whole number, no more than the attempts' },
  attempts: { what: 'How many were taken', may: 'A whole number from 1' },
  nerves: { what: 'How nervous you were before the round', may: '0 to 10; empty if nobody asked' },
  shooter: { what: 'Who shot', may: 'A name, the same in every row of theirs' },
  note: { what: 'Anything else', may: 'Your own words, or empty' },
};

/** One row of a record, as an example. */
export const EXAMPLE: Readonly<Record<Column, string>> = {
  date: '2026-11-25',
  session: '1',
  round: '2',
  condition: 'pressured',
  game: 'Threes',
  spot: 'left-corner',
  shot: 'catch',
  first: '25',
  makes: '3',
  attempts: '5',
  nerves: '6',
  shooter: 'Ines',
  note: '',
};
