import type { Round } from '../../log/book.ts';
import { roundTally, type Tally } from '../../log/roundCells.ts';

/** The shooter's usual nerves, 0 to 10: the median of their relaxed rounds. */
export type NervesLine = number;

/** Fewer rated relaxed rounds than this say nothing about what is usual. Our own choice. */
const LEAST_RATED = 3;

/** Did pressure arrive? Pressured rounds, sorted by what the shooter felt before them. */
export interface Felt {
  /** Null with too few rated relaxed rounds; then every rated round is `unrated`. */
  readonly line: NervesLine | null;
  readonly felt: FeltRounds;
  /** Nerves stayed at or below the line: no pressure was felt. */
  readonly unfelt: FeltRounds;
  /** Nerves were not noted. */
  readonly unrated: FeltRounds;
}

export interface FeltRounds extends Tally {
  readonly rounds: readonly Round['id'][];
}

/** Sorts one shooter's pressured rounds by whether nerves rose above the shooter's relaxed median. */
export function feltOf(rounds: Iterable<Round>): Felt {
  const all = [...rounds].filter((round) => roundTally(round).attempts > 0);
  const line = nervesLine(all);
  const pressured = all.filter((round) => round.condition === 'pressured');
  const verdict = (round: Round): boolean | null => (line === null ? null : isFelt(round, line));
  const those = (wanted: boolean | null): FeltRounds => {
    const chosen = pressured.filter((round) => verdict(round) === wanted);
    const tallies = chosen.map((round) => roundTally(round));
    return {
      rounds: chosen.map(({ id }) => id).toSorted(),
      makes: tallies.reduce((sum, { makes }) => sum + makes, 0),
      attempts: tallies.reduce((sum, { attempts }) => sum + attempts, 0),
    };
  };
  return { line, felt: those(true), unfelt: those(false), unrated: those(null) };
}

/** Whether nerves rose in a pressured round; null for a relaxed round or one without a rating. */
export function isFelt({ condition, nerves }: Round, line: NervesLine): boolean | null {
  return condition === 'relaxed' || nerves === null ? null : nerves > line;
}

function nervesLine(rounds: readonly Round[]): NervesLine | null {
  const rated: number[] = [];
  for (const { condition, nerves } of rounds)
    if (condition === 'relaxed' && nerves !== null) rated.push(nerves);
  if (rated.length < LEAST_RATED) return null;
  rated.sort((a, b) => a - b);
  const half = rated.length / 2;
  const low = rated[Math.ceil(half) - 1] ?? NaN;
  const high = rated[Math.floor(half)] ?? NaN;
  return (low + high) / 2;
}
