import { isoWeekName } from '../basics/days.ts';
import type { RoundId, ShooterId } from '../basics/ids.ts';
import { byText } from '../basics/order.ts';
import { oncePerList } from '../basics/remembered.ts';
import type { IsoDate } from '../basics/units.ts';
import type { SpotName } from '../court/spots.ts';
import type { Book, Round } from '../log/book.ts';
import { cellsOf, type ByCondition, type CellPair } from '../stats/drop.ts';
import { type Felt, feltOf } from '../stats/model/felt.ts';
import { evidenceOf, needsOf, type Evidence, type Needs } from '../stats/reading.ts';
import { summaryOf, type Summary } from '../stats/summary.ts';
import { recordOf } from './recordOf.ts';

/** Level of the interval of the drop from all shots thrown together. */
export { SIMPLE_LEVEL } from '../stats/summary.ts';

/* The numbers of one shooter, ready to be shown. They stand between the statistics and the screens. */

/** One spot, all kinds of shot from it compared kind by kind. */
export interface SpotFigures extends Summary {
  readonly spot: SpotName;
  /** The kinds of shot taken there. */
  readonly kinds: readonly (Summary & Pick<CellPair, 'shot'>)[];
}

/** One session, or one week. */
export interface Stretch extends Summary {
  /** The session's id, or the week as ISO 8601 names it. */
  readonly key: string;
  /** The first day with a round in it. */
  readonly date: IsoDate;
  /** `2026-W48` (ISO 8601). */
  readonly week: string;
  readonly label: string;
}

export interface Figures extends Summary {
  readonly evidence: Evidence;
  /** What is missing for a first verdict. */
  readonly needs: Needs;
  /** Shots at a spot, or of a kind, seen in one condition alone: they say nothing about the drop. */
  readonly leftOut: ByCondition<number>;
  readonly spots: readonly SpotFigures[];
  /** Oldest first. */
  readonly sessions: readonly Stretch[];
  /** Weeks with a shot in them, oldest first. */
  readonly weeks: readonly Stretch[];
  /** Pressured rounds by what was felt before them. */
  readonly felt: Felt;
  /** Those in which no pressure was felt. */
  readonly unfelt: ReadonlySet<RoundId>;
  /** Newest first. */
  readonly rounds: readonly Round[];
}

const cache = new WeakMap<Book['rounds'], Map<ShooterId, Figures>>();

/**
 * The figures of a shooter over all rounds that are over or were left; a round being played is not in them. Kept for
 * as long as the book's rounds stay the same, so a tap on court costs nothing here.
 */
export function shooterFigures(book: Book, shooter: ShooterId): Figures {
  let known = cache.get(book.rounds);
  if (!known) {
    known = new Map();
    cache.set(book.rounds, known);
  }
  let figures = known.get(shooter);
  if (!figures) {
    figures = figuresOf(book, shooter);
    known.set(shooter, figures);
  }
  return figures;
}

function figuresOf(book: Book, shooter: ShooterId): Figures {
  const rounds = recordOf(book, shooter);
  const cells = [...cellsOf(rounds).values()];
  const summary = summaryOf(cells);
  const evidence = evidenceOf(rounds);
  const felt = feltOf(rounds);
  return {
    ...summary,
    evidence,
    needs: needsOf(evidence),
    leftOut: {
      relaxed: summary.relaxed.attempts - evidence.relaxed.attempts,
      pressured: summary.pressured.attempts - evidence.pressured.attempts,
    },
    spots: spotsOf(cells),
    sessions: stretchesOf(
      grouped(rounds, ({ session }) => session),
      sumOfSession,
      (key) => book.sessions.get(key)?.label ?? key,
    ),
    weeks: stretchesOf(grouped(rounds, weekNames()), sumOfWeek, (key) => key),
    felt,
    unfelt: new Set(felt.unfelt.rounds),
    rounds: newestFirst(rounds),
  };
}

function spotsOf(cells: readonly CellPair[]): SpotFigures[] {
  return [...grouped(cells, ({ spot }) => spot)].map(([spot, kinds]) => ({
    spot,
    ...summaryOf(kinds),
    kinds: kinds.map((cell) => ({ shot: cell.shot, ...summaryOf([cell]) })),
  }));
}

/** A stretch without its names; null where nothing was shot in it. */
type Sum = Omit<Stretch, 'key' | 'label'> | null;

const sumOfSession = oncePerList(sumOf);
// By itself: the first round of a week is the first of a session too.
const sumOfWeek = oncePerList(sumOf);

function sumOf(inside: readonly Round[]): Sum {
  const summary = summaryOf(cellsOf(inside).values());
  const [first] = inside.toSorted((a, b) => byText(a.date, b.date));
  if (!first || summary.relaxed.attempts + summary.pressured.attempts === 0) return null;
  const { date } = first;
  return { ...summary, date, week: isoWeekName(date) };
}

function stretchesOf(
  groups: ReadonlyMap<string, readonly Round[]>,
  sum: (inside: readonly Round[]) => Sum,
  labelOf: (key: string) => string,
): Stretch[] {
  const stretches: Stretch[] = [];
  for (const [key, inside] of groups) {
    const summed = sum(inside);
    if (summed) stretches.push({ ...summed, key, label: labelOf(key) });
  }
  return stretches.toSorted((a, b) => byText(a.date, b.date));
}

/** Names the week of a round; each day's is worked out once. */
function weekNames(): (round: Round) => string {
  const known = new Map<IsoDate, string>();
  return ({ date }) => {
    const name = known.get(date) ?? isoWeekName(date);
    known.set(date, name);
    return name;
  };
}

function newestFirst(rounds: readonly Round[]): Round[] {
  return rounds.toReversed().toSorted((a, b) => byText(b.date, a.date) || b.startedAt - a.startedAt);
}

function grouped<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}
