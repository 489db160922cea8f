import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { EMPTY_BOOK, type Book } from '../../renderer/log/book.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { studyOf, type Study } from '../../renderer/stats/study.ts';
import { shooterFigures, type Figures } from '../../renderer/store/figures.ts';
import type { Index } from '../../renderer/screens/studyParts.ts';
import { bookFromFile, recordFile, type RecordRow } from './records.ts';

/** What the screens know of one shooter. */
export interface Known {
  readonly figures: Figures;
  readonly study: Study;
}

/** The two shooters of the invented season: one whose drop shrinks, one whose drop stays. */
export function demoShooters(): readonly [Known, Known] {
  const book = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
  const [first = '', second = ''] = book.shooters.keys();
  return [knownOf(book, first), knownOf(book, second)];
}

/** The one shooter of a record file. */
export function knownFrom(rows: readonly RecordRow[]): Known {
  const book = rows.length === 0 ? EMPTY_BOOK : bookFromFile(recordFile(rows));
  const [shooter = 'nobody'] = book.shooters.keys();
  return knownOf(book, shooter);
}

function knownOf(book: Book, shooter: string): Known {
  const figures = shooterFigures(book, shooter);
  return { figures, study: studyOf(figures.rounds, { draws: 400 }).study };
}

/** @throws Error where the study has no index */
export function indexOf({ index }: Study): Index {
  if (index.kind === 'none') throw new Error(`no index: ${index.reason}`);
  return index;
}

/** Sessions with a relaxed and a pressured round each, from one spot. */
export function sessionsOf(
  sessions: number,
  relaxed: readonly [makes: number, attempts: number],
  pressured: readonly [makes: number, attempts: number],
): RecordRow[] {
  return Array.from({ length: sessions }, (_, at): RecordRow[] => {
    const of = { date: `2026-10-${String(at + 1).padStart(2, '0')}`, session: at };
    return [
      { ...of, round: 1, makes: relaxed[0], attempts: relaxed[1] },
      { ...of, round: 2, condition: 'pressured', makes: pressured[0], attempts: pressured[1] },
    ];
  }).flat();
}
