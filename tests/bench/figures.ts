import Papa from 'papaparse';

import { present } from '../../renderer/basics/invariant.ts';
import { STANDARD_CARDS, type Stop } from '../../renderer/court/cards.ts';
import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { reach } from '../../renderer/games/reach.ts';
import type { TurnResult } from '../../renderer/games/rule.ts';
import { solve } from '../../renderer/games/solver.ts';
import { EMPTY_BOOK, type Book } from '../../renderer/log/book.ts';
import { COLUMNS } from '../../renderer/log/csvColumns.ts';
import { readCsv } from '../../renderer/log/csvRead.ts';
import { parseEvent, type LogEvent } from '../../renderer/log/envelope.ts';
import { fold, foldAll, foldParsed } from '../../renderer/log/fold.ts';
import { roundTally } from '../../renderer/log/roundCells.ts';
import { abilityOn, chanceOfAtLeast, chooseMark, type Ability } from '../../renderer/stats/ability.ts';
import { eventsFrom } from '../../renderer/storage/rows.ts';
import { shooterFigures } from '../../renderer/store/figures.ts';
import type { Limit, Outcome } from './outcome.ts';
import { alternate } from './samples.ts';

/*
 * The work that is done between the log and the screens, in Node, on the demo season. No limit here is agreed on: they
 * are guards against growing slow, a good deal wider than what was measured.
 */

const TODAY = '2026-11-25';
const REPEATS = 40;
const CSV_ROWS = 10_000;
const FRAME_MS = 1000 / 60;

interface Contest {
  readonly what: string;
  readonly work: () => unknown;
  readonly rivalWords: string;
  readonly rival: () => unknown;
  readonly limit: Pick<Limit, 'on' | 'most'>;
}

export function figures(): Outcome[] {
  const events = demoSeason(TODAY, 60, 'bench', 1);
  const book = foldAll(EMPTY_BOOK, events);
  const contests = [...logContests(events, book), ...statContests(book), csvContest()];
  return contests.map(({ what, work, rivalWords, rival, limit }) => {
    const took = alternate(work, rival, { repeats: REPEATS });
    return {
      what,
      unit: 'ms',
      figure: took.work,
      rival: { what: rivalWords, figure: took.rival },
      n: String(REPEATS),
      limit: { ...limit, by: 'own' },
    };
  });
}

function logContests(events: readonly LogEvent[], book: Book): Contest[] {
  const json = JSON.stringify(events);
  const rows = new TextEncoder().encode(
    JSON.stringify(
      events.map(({ id, at, zone, device, type, v, body }) => [id, at, zone, device, type, v, body]),
    ),
  );
  // The last round as it was before its last shot, and that shot.
  const shotAt = events.findLastIndex(({ type }) => type === 'ShotTaken');
  const playing = foldAll(EMPTY_BOOK, events.slice(0, shotAt));
  const shot = present(events[shotAt], 'a shot');
  return [
    {
      what: `the demo season from bytes to book, ${events.length} events`,
      work: () => foldParsed(EMPTY_BOOK, eventsFrom(rows).map(parseEvent)),
      rivalWords: 'JSON.parse of its events',
      rival: () => JSON.parse(json) as unknown,
      limit: { on: 'figure', most: 250 },
    },
    {
      what: 'fold of the demo season',
      work: () => foldAll(EMPTY_BOOK, events),
      rivalWords: 'JSON.parse of its events',
      rival: () => JSON.parse(json) as unknown,
      limit: { on: 'ratio', most: 5 },
    },
    {
      what: 'fold of one more shot',
      work: () => fold(playing, shot),
      rivalWords: 'the whole log folded anew',
      rival: () => foldAll(EMPTY_BOOK, events.slice(0, shotAt + 1)),
      limit: { on: 'ratio', most: 0.1 },
    },
    {
      what: 'all figures of a shooter',
      // A new map of rounds, so that nothing is remembered.
      work: () => shooterFigures({ ...book, rounds: new Map(book.rounds) }, shooterOf(book)),
      rivalWords: 'adding up every shot once',
      rival: () => [...book.rounds.values()].map(roundTally),
      limit: { on: 'figure', most: 3 * FRAME_MS },
    },
  ];
}

function statContests(book: Book): Contest[] {
  const { stops } = present(
    STANDARD_CARDS.find(({ id }) => id === 'whole-45'),
    'the whole card',
  );
  const rounds = [...book.rounds.values()].filter(({ shooter }) => shooter === shooterOf(book));
  const ability = abilityOn(rounds, 'pressured', stops, TODAY);
  const turns = turnsOf(stops);
  const rule = reach(chooseMark(ability, 0.5).makes, turns);
  const results = Array.from({ length: turns }, (_, turn): TurnResult => (turn % 2 === 0 ? 'make' : 'miss'));
  return [
    {
      what: 'ability and even mark on the whole card',
      work: () => chooseMark(abilityOn(rounds, 'pressured', stops, TODAY), 0.5),
      rivalWords: 'the same, mark by mark',
      rival: () => markByMark(abilityOn(rounds, 'pressured', stops, TODAY), turns),
      limit: { on: 'figure', most: 3 * FRAME_MS },
    },
    {
      what: 'the whole card solved, standing after every shot',
      work: () => {
        const game = solve(rule, ability);
        return results.map((_, turn) => game.standing(results.slice(0, turn)));
      },
      rivalWords: 'solved anew after every shot',
      rival: () => results.map((_, turn) => solve(rule, ability).standing(results.slice(0, turn))),
      limit: { on: 'ratio', most: 0.25 },
    },
  ];
}

function csvContest(): Contest {
  const text = csvOf(CSV_ROWS);
  return {
    what: `a record file of ${CSV_ROWS} rows, read and checked`,
    work: () => readCsv(text),
    rivalWords: 'split into fields by Papa Parse',
    rival: () => Papa.parse(text),
    limit: { on: 'figure', most: 500 },
  };
}

function shooterOf(book: Book): string {
  return present(book.shooters.keys().next().value, 'a shooter');
}

function turnsOf(stops: readonly Stop[]): number {
  return stops.reduce((sum, { attempts }) => sum + attempts, 0);
}

/** The mark nearest to an even bet, with the chances worked out for each mark by itself. */
function markByMark(ability: Ability, turns: number): number {
  const off = (makes: number): number => Math.abs(chanceOfAtLeast(ability, makes) - 0.5);
  return Array.from({ length: turns }, (_, at) => at + 1).reduce((best, makes) =>
    off(makes) < off(best) ? makes : best,
  );
}

/** Rounds of five spots, two a day. */
function csvOf(rows: number): string {
  const spots = ['left-corner', 'left-wing', 'top', 'right-wing', 'right-corner'];
  const lines = Array.from({ length: rows }, (_, row) => {
    const round = Math.floor(row / spots.length);
    const day = new Date(Date.UTC(2020, 0, 1 + Math.floor(round / 2))).toISOString().slice(0, 10);
    const condition = round % 2 === 0 ? 'relaxed' : 'pressured';
    const spot = spots[row % spots.length] ?? '';
    const first = 25 * (round % 2);
    return [
      day,
      1,
      1 + (round % 2),
      condition,
      'Threes',
      spot,
      'catch',
      first,
      row % 6,
      5,
      3,
      'Ada',
      '',
    ].join(',');
  });
  return [COLUMNS.join(','), ...lines].join('\r\n');
}
