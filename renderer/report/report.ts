import type { CellPair } from '../stats/drop.ts';
import { freeThrowsOf, freeThrowTally } from '../stats/freeThrows.ts';
import { neighbourPairs } from '../stats/model/neighbourPairs.ts';
import { READING_LEVEL } from '../stats/reading.ts';
import { studyOf } from '../stats/study.ts';
import { SIMPLE_LEVEL } from '../stats/summary.ts';
import { type FileRecord, recordsOf } from './fileRecords.ts';
import { type ModelFigures, modelFigures, NOT_TOLD } from './modelFigures.ts';
import { type ReportMix, shooterNotes, simpleNotes } from './reportNotes.ts';
import { type SimpleFigures, simpleFigures, sortedCells } from './simpleFigures.ts';

/* The result without the screen: a record file in, numbers out. */

export interface ReportOptions {
  /** Decides the model's draws; by default a hash of the record, so that the same file gets the same answer. */
  readonly seed?: number | undefined;
  /** `relaxed`, the default: all shots, the drop over the mix of the relaxed ones. `free-throws`: free throws alone. */
  readonly mix?: ReportMix | undefined;
}

/** More than the screen takes, where a second counts: another seed is then felt in the last digits alone. */
const DRAWS = 4000;

interface Figures extends SimpleFigures, ModelFigures {
  readonly rounds: number;
  /** What a reader should know about these numbers, in plain sentences. */
  readonly notes: readonly string[];
}

export interface ShooterReport extends Figures {
  readonly name: string;
}

/**
 * The figures of the file's one shooter. Of several: the simple ones added up, like compared with like inside each
 * shooter, and none of the model's, since there is no one whose drop that would be.
 */
export interface Report extends Figures {
  readonly mix: ReportMix;
  /** In percent: how sure the intervals are. */
  readonly levels: {
    readonly rates: number;
    readonly drop: number;
    readonly matched: number;
    readonly simple: number;
  };
  /** By name. */
  readonly shooters: readonly ShooterReport[];
}

/**
 * The report on a record file. Where rounds have `first` or a number, the order of the rows changes nothing.
 *
 * @throws CsvError with row, column and reason where the file is not a record file
 */
export function reportOf(csv: string, { seed, mix = 'relaxed' }: ReportOptions = {}): Report {
  const strata: CellPair[] = [];
  const shooters: ShooterReport[] = [];
  for (const record of recordsOf(csv)) {
    const cells = sortedCells(mix === 'free-throws' ? freeThrowsOf(record.rounds) : record.rounds);
    strata.push(...cells);
    shooters.push(shooterReport(record, cells, seed, mix));
  }
  const level = Math.round(100 * READING_LEVEL);
  return {
    mix,
    levels: { rates: level, drop: level, matched: level, simple: Math.round(100 * SIMPLE_LEVEL) },
    ...together(shooters, strata, mix),
    shooters,
  };
}

function shooterReport(
  { name, rounds }: FileRecord,
  cells: readonly CellPair[],
  seed: number | undefined,
  mix: ReportMix,
): ShooterReport {
  const { figures, summary } = simpleFigures(cells);
  const pairs = neighbourPairs(rounds, mix === 'free-throws' ? freeThrowTally : undefined);
  const options = { mix, draws: DRAWS, neighbours: pairs, ...(seed === undefined ? {} : { seed }) };
  const { study } = studyOf(rounds, options);
  return {
    name,
    rounds: rounds.length,
    ...figures,
    ...modelFigures(study, pairs),
    notes: shooterNotes(summary, study, pairs, mix),
  };
}

function together(shooters: readonly ShooterReport[], strata: readonly CellPair[], mix: ReportMix): Figures {
  const [one, ...more] = shooters;
  if (one && more.length === 0) {
    const { name: _, ...figures } = one;
    return figures;
  }
  const { figures, summary } = simpleFigures(strata);
  return {
    rounds: shooters.reduce((sum, { rounds }) => sum + rounds, 0),
    ...figures,
    ...NOT_TOLD,
    notes: [
      ...simpleNotes(summary, mix),
      `The file holds ${shooters.length} shooters: the drop, the verdict and all else from the model are told for each, see "shooters".`,
    ],
  };
}
