import { debtsOf } from '../../renderer/games/ledger.ts';
import { EMPTY_BOOK, type Book, type Round, type Session } from '../../renderer/log/book.ts';
import { shooterFigures } from '../../renderer/store/figures.ts';
import { shotsOnRecord } from '../../renderer/store/forecast.ts';
import { missFigures } from '../../renderer/store/missFigures.ts';
import { longRecord } from './longRecord.ts';
import type { Outcome } from './outcome.ts';

/*
 * What the page itself has to work out on a record of 10,400 rounds: for the first time, and after one more round. In
 * milliseconds of the processor: what else the machine does is not its cost. No limit here is agreed on.
 */

const REPEATS = 15;
const FRAME_MS = 16;

export function longFigures(): Outcome[] {
  const rounds = longRecord();
  const strange = bookOf(structuredClone(rounds));
  const first = spent(() => {
    onTheBench(strange);
    elsewhere(strange);
  });
  const again = Array.from({ length: REPEATS }, () => {
    // The latest round as another object, as after it was played or corrected.
    const last = rounds.pop();
    if (!last) throw new Error('no rounds');
    rounds.push({ ...last });
    const book = bookOf(rounds);
    return { bench: spent(() => onTheBench(book)), more: spent(() => elsewhere(book)) };
  });
  const least = (of: (one: (typeof again)[number]) => number): number => Math.min(...again.slice(3).map(of));
  const rival = { what: 'the first time', figure: first };
  const n = `best of ${REPEATS - 3}, ${rounds.length} rounds, processor time`;
  const limit = { on: 'figure', most: FRAME_MS, by: 'own' } as const;
  return [
    {
      what: 'the bench after one more round',
      unit: 'ms',
      figure: least(({ bench }) => bench),
      rival,
      n,
      limit,
    },
    {
      what: 'bench, result and set-up after one more round',
      unit: 'ms',
      figure: least(({ bench, more }) => bench + more),
      rival,
      n,
      limit,
    },
    {
      what: 'the same for the first time',
      unit: 'ms',
      figure: first,
      rival: { what: 'a copy of the record', figure: spent(() => structuredClone(rounds)) },
      n: `1, ${rounds.length} rounds, processor time`,
      limit: { on: 'figure', most: 500, by: 'own' },
    },
  ];
}

function onTheBench(book: Book): void {
  const [{ shooter } = { shooter: '' }] = book.rounds.values();
  shooterFigures(book, shooter);
  debtsOf(book, shooter);
}

/** On the result and before a round, when the bench was seen. */
function elsewhere(book: Book): void {
  const [{ shooter, stops } = { shooter: '', stops: [] }] = book.rounds.values();
  missFigures(shooterFigures(book, shooter).rounds);
  shotsOnRecord(book, shooter, stops);
}

function bookOf(rounds: readonly Round[]): Book {
  const sessions = new Map<string, Session>();
  for (const { session, shooter, date } of rounds) {
    sessions.set(session, { id: session, shooter, date, label: session, rounds: 10 });
  }
  return { ...EMPTY_BOOK, sessions, rounds: new Map(rounds.map((round) => [round.id, round])) };
}

/** Milliseconds of the processor, finer than threadTime.ts can tell. */
function spent(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
