import type { Probability } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import { roundTally, turnsOf } from '../log/roundCells.ts';
import { middleOf, poissonBinomial } from './ability.ts';

/** Marks, or games, of about the same chance, and how many of them were beaten. */
export interface ScoredMarks {
  /** Mean chance that was said. */
  readonly said: Probability;
  readonly marks: number;
  readonly beaten: number;
  /** How many would be beaten four times in five, were the chances right. */
  readonly low: number;
  readonly high: number;
}

/** Marks are put together by chance in this many classes of the same width. */
const CLASSES = 5;

/** The chance of a mark or a game as it was said before the round, and what came of it. */
export interface MarkOutcome {
  readonly chance: Probability;
  readonly beaten: boolean;
}

/**
 * What came of a round's mark; null where it has none, or nobody can say. The chance was said of a card shot to its end
 * with time enough: a round in which the clock took a shot is left out, beaten or not, and so is one ended early, unless
 * the mark was beaten or out of reach by then.
 */
export function markOutcome(round: Round): MarkOutcome | null {
  const mark = round.pressure?.mark;
  if (!mark || round.state !== 'ended') return null;
  if (round.ending === 'time-up' || round.ending === 'interrupted') return null;
  if (round.entries.some(({ kind }) => kind === 'expired')) return null;
  const { used, all } = turnsOf(round);
  const { makes } = roundTally(round);
  if (makes >= mark.makes) return { chance: mark.chance, beaten: true };
  return makes + all - used < mark.makes ? { chance: mark.chance, beaten: false } : null;
}

/** The smallest chances first; classes without a mark are left out. */
export function scoreMarks(outcomes: readonly MarkOutcome[]): ScoredMarks[] {
  const classes = Array.from({ length: CLASSES }, (): MarkOutcome[] => []);
  for (const outcome of outcomes) {
    classes[Math.min(CLASSES - 1, Math.floor(CLASSES * outcome.chance))]?.push(outcome);
  }
  return classes.filter((marks) => marks.length > 0).map(scoreOf);
}

function scoreOf(outcomes: readonly MarkOutcome[]): ScoredMarks {
  const chances = outcomes.map(({ chance }) => chance);
  return {
    said: chances.reduce((sum, chance) => sum + chance, 0) / chances.length,
    marks: outcomes.length,
    beaten: outcomes.filter(({ beaten }) => beaten).length,
    ...middleOf(poissonBinomial(chances)),
  };
}
