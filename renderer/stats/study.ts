import { finish, partOf } from '../basics/steps.ts';
import type { Points, Probability } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import type { ChokeIndex, NoIndex } from './model/chokeIndex.ts';
import type { PointsEstimate } from './model/estimate.ts';
import {
  conditionalEvidenceInSteps,
  type Evidence,
  NO_EVIDENCE,
  signFlipEvidence,
  strataByDay,
} from './model/evidence.ts';
import { type Felt, feltOf } from './model/felt.ts';
import { fitDropInSteps, type FitOptions } from './model/fitDrop.ts';
import { type ModelData, modelDataInSteps } from './model/modelData.ts';
import { looksTossed, type NeighbourPairs } from './model/neighbourPairs.ts';
import { disagree, fewStopped, pairResult, type PairResult, type Pairs, playedPairs } from './model/pairs.ts';
import type { Posterior } from './model/standardise.ts';
import { type Verdict, verdictOf } from './model/verdict.ts';
import { type AfterMake, afterMakeInSteps } from './afterMake.ts';
import { cellKey, cellsOf } from './drop.ts';
import { freeThrowsOf } from './freeThrows.ts';
import { type Outlook, outlookOf } from './outlook.ts';
import { evidenceOf, type Evidence as Have } from './reading.ts';

/** Pressured rounds by what was felt before them, and the drop without those in which nothing was. */
export interface FeltStudy extends Felt {
  /** Null where there is no such round, or no index without them, and in a quick study. */
  readonly dropWithout: PointsEstimate | null;
}

/** All that one shooter's record says about pressure. Plain values only, so that a worker can hand it over. */
export interface Study {
  readonly index: ChokeIndex | NoIndex;
  readonly verdict: Verdict;
  /** The shots it rests on. */
  readonly have: Have;
  /** What coin-ordered pairs say by themselves. */
  readonly pairs: PairResult;
  /**
   * Whether a coin decided their order, or of neighbours could well have, and few were ended early. If not, nothing rests
   * on them.
   */
  readonly pairsFair: boolean;
  /** Their evidence, which may be looked at every day. */
  readonly pairEvidence: Evidence;
  /** The same kind of evidence day by day, from all rounds; tiring and warming up can fool it. Null in a quick study. */
  readonly dayEvidence: Evidence | null;
  /** Pairs and model tell different stories, and the pairs are to be believed. */
  readonly disagrees: boolean;
  readonly felt: FeltStudy;
  /** From all shots, whatever was asked for. */
  readonly outlook: Outlook;
  /** The same. */
  readonly afterMake: AfterMake;
}

/** A study, and what further questions are answered from. */
export interface StudyFit {
  readonly study: Study;
  readonly data: ModelData;
  /** Null where there is no index. */
  readonly posterior: Posterior | null;
}

export interface StudyOptions extends Pick<FitOptions, 'seed' | 'mix' | 'pressure' | 'hyper' | 'draws'> {
  /** Pairs of a record that names none, found for this mix; by default those the log has a coin for. */
  readonly neighbours?: NeighbourPairs;
}

/** Shares of the work that are done at least, as measured on five years of shots. */
const DONE = { data: 0.03, index: 0.86, split: 0.88, pairs: 0.89, days: 0.93 };
/** With spreads given, and most sessions known from the study before. */
const QUICK_DONE = { data: 0.06, index: 0.84, split: 0.86, pairs: 0.94, days: 1 };

/**
 * Studies one shooter's rounds, of both conditions, in any order. With spreads given it is a quick study, as after a
 * round: what only the curious read is left to the next thorough one. Asked for free throws alone, the verdict, pairs and
 * evidence rest on free throws alone; the model still learns days and form from every shot.
 *
 * @throws InvariantError where rounds of two shooters come together
 * @throws RangeError for a number of draws that is not whole and at least 20
 */
export function studyOf(rounds: readonly Round[], options: StudyOptions = {}): StudyFit {
  return finish(studyInSteps(rounds, options));
}

/**
 * The same in short steps, for whoever must be free to answer in between.
 *
 * @yields the share of the work that is done at least, 0 to 1
 * @throws InvariantError and RangeError as {@link studyOf} does
 */
export function* studyInSteps(
  rounds: readonly Round[],
  options: StudyOptions = {},
): Generator<Probability, StudyFit> {
  const done = options.hyper ? QUICK_DONE : DONE;
  const data = yield* partOf(modelDataInSteps(rounds), 0, done.data);
  const { index, posterior } = yield* partOf(fitDropInSteps(data, options), done.data, done.index);
  const split = yield* partOf(afterMakeInSteps(rounds), done.index, done.split);
  const asked = options.mix === 'free-throws' ? freeThrowsOf(rounds) : rounds;
  const found = pairsOf(asked, options);
  const have = evidenceOf(asked);
  yield done.split;
  const pairs = pairResult(found);
  const pairEvidence = signFlipEvidence(found.played);
  yield done.pairs;
  const felt = feltOf(rounds);
  const outlook = outlookOf(rounds, index, have);
  const days = options.hyper ? null : conditionalEvidenceInSteps(strataByDay(asked));
  const dayEvidence = days && (yield* partOf(days, done.pairs, done.days));
  const without = dropWithoutInSteps(rounds, felt, index, options);
  const study: Study = {
    index,
    verdict: verdictOf(index, found.fair ? pairEvidence : NO_EVIDENCE, have),
    have,
    pairs,
    pairsFair: found.fair,
    pairEvidence,
    dayEvidence,
    disagrees: found.fair && index.kind === 'index' && disagree(pairs, dropForPairs(index, asked, found)),
    felt: { ...felt, dropWithout: yield* partOf(without, done.days, 1) },
    outlook,
    afterMake: split,
  };
  return { study, data, posterior };
}

function pairsOf(
  asked: readonly Round[],
  { neighbours }: Pick<StudyOptions, 'neighbours'>,
): Pairs & { readonly fair: boolean } {
  if (neighbours) return { ...neighbours, fair: looksTossed(neighbours) };
  const tossed = playedPairs(asked);
  return { ...tossed, fair: fewStopped(tossed) };
}

/** What the model says of the shots the pairs were made of. Neighbours of a file are taken at the whole mix. */
function dropForPairs({ overall, places }: ChokeIndex, rounds: readonly Round[], { played }: Pairs): Points {
  const ids = new Set(played.map(({ id }) => id));
  const paired = rounds.filter(({ pair }) => pair !== null && ids.has(pair.id));
  const cells = cellsOf(paired);
  let [sum, shots] = [0, 0];
  for (const { spot, shot, points } of places) {
    const weight = cells.get(cellKey(spot, shot))?.pressured.attempts ?? 0;
    sum += weight * points;
    shots += weight;
  }
  return shots === 0 ? overall.points : sum / shots;
}

/** At the spreads of the index: leaving rounds out is no reason to learn them anew. */
function* dropWithoutInSteps(
  rounds: readonly Round[],
  { line, unfelt }: Felt,
  index: Study['index'],
  options: StudyOptions,
): Generator<Probability, PointsEstimate | null> {
  if (options.hyper || line === null || unfelt.rounds.length === 0 || index.kind === 'none') return null;
  const hyper = index.hyper.mean;
  const data = yield* partOf(modelDataInSteps(rounds, { feltAbove: line }), 0, 0.2);
  const { index: without } = yield* partOf(fitDropInSteps(data, { ...options, hyper }), 0.2, 1);
  return without.kind === 'index' ? without.overall : null;
}
