import type { Round } from '../../log/book.ts';
import { roundTally, type Tally } from '../../log/roundCells.ts';

/** The shooter's usual nerves, 0 to 10: the medians of their relaxed rounds. */
export interface NervesLine {
  /** As rated before a round. */
  readonly before: number;
  /** As rated after it, for the time of play; null with too few such ratings. */
  readonly during: number | null;
}

/** Fewer rated relaxed rounds than this say nothing about what is usual. Our own choice. */
const LEAST_RATED = 3;

/** Did pressure arrive? Pressured rounds, sorted by what the shooter felt before and during them. */
export interface Felt {
  /** Null with too few rated relaxed rounds; then every rated round is `unrated`. */
  readonly line: NervesLine | null;
  readonly felt: FeltRounds;
  /** Nerves stayed at or below the line, before as well as during: no pressure was felt. */
  readonly unfelt: FeltRounds;
  /** Nerves were not noted. */
  readonly unrated: FeltRounds;
}

export interface FeltRounds extends Tally {
  readonly rounds: readonly Round['id'][];
}

/** Sorts one shooter's pressured rounds by whether nerves rose above the shooter's relaxed medians. */
export function feltOf(rounds: Iterable<Round>): Felt {
  const all = [...rounds].filter((round) => roundTally(round).attempts > 0);
  const line = nervesLine(all);
  const [felt, unfelt, unrated] = [new Heap(), new Heap(), new Heap()];
  for (const round of all) {
    if (round.condition === 'relaxed') continue;
    const rose = line === null ? null : isFelt(round, line);
    (rose === null ? unrated : rose ? felt : unfelt).add(round);
  }
  return { line, felt: felt.sum(), unfelt: unfelt.sum(), unrated: unrated.sum() };
}

/** Rounds of one kind, being added up. */
class Heap {
  private readonly rounds: Round['id'][] = [];
  private makes = 0;
  private attempts = 0;

  add(round: Round): void {
    const { makes, attempts } = roundTally(round);
    this.rounds.push(round.id);
    this.makes += makes;
    this.attempts += attempts;
  }

  sum(): FeltRounds {
    const { makes, attempts } = this;
    return { rounds: this.rounds.toSorted(), makes, attempts };
  }
}

/** Whether nerves rose, before or during a pressured round; null for a relaxed round or one without a rating before it. */
export function isFelt({ condition, nerves, nervesAfter }: Round, line: NervesLine): boolean | null {
  if (condition === 'relaxed' || nerves === null) return null;
  return nerves > line.before || (nervesAfter !== null && line.during !== null && nervesAfter > line.during);
}

function nervesLine(rounds: readonly Round[]): NervesLine | null {
  const relaxed = rounds.filter(({ condition }) => condition === 'relaxed');
  const before = median(relaxed.map(({ nerves }) => nerves));
  return before === null ? null : { before, during: median(relaxed.map(({ nervesAfter }) => nervesAfter)) };
}

/** Null with too few ratings. */
function median(ratings: readonly (number | null)[]): number | null {
  const rated = ratings.filter((rating) => rating !== null);
  if (rated.length < LEAST_RATED) return null;
  rated.sort((a, b) => a - b);
  const half = rated.length / 2;
  const low = rated[Math.ceil(half) - 1] ?? NaN;
  const high = rated[Math.floor(half)] ?? NaN;
  return (low + high) / 2;
}
