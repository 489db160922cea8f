import { finish } from '../basics/steps.ts';
import type { Points, Probability } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import type { ChokeIndex, NoIndex } from './model/chokeIndex.ts';
import type { PointsEstimate } from './model/estimate.ts';
import {
  conditionalEvidence,
  type Evidence,
  NO_EVIDENCE,
  signFlipEvidence,
  strataByDay,
} from './model/evidence.ts';
import { type Felt, feltOf } from './model/felt.ts';
import { fitDropInSteps, type FitOptions } from './model/fitDrop.ts';
import { modelData, type ModelData } from './model/modelData.ts';
import { looksTossed, neighbourPairs } from './model/neighbourPairs.ts';
import { disagree, fewStopped, pairResult, type PairResult, type Pairs, playedPairs } from './model/pairs.ts';
import type { Posterior } from './model/standardise.ts';
import { type Verdict, verdictOf } from './model/verdict.ts';
import { cellKey, cellsOf } from './drop.ts';
import { freeThrowsOf, freeThrowTally } from './freeThrows.ts';
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
}

/** A study, and what further questions are answered from. */
export interface StudyFit {
  readonly study: Study;
  readonly data: ModelData;
  /** Null where there is no index. */
  readonly posterior: Posterior | null;
}

export interface StudyOptions extends Pick<FitOptions, 'seed' | 'mix' | 'hyper' | 'draws'> {
  /** `tossed` = those the log has a coin for, the default; `neighbours` = found in a record that names none. */
  readonly pairs?: 'tossed' | 'neighbours';
}

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
  const data = modelData(rounds);
  const { index, posterior } = yield* fitDropInSteps(data, options);
  const asked = options.mix === 'free-throws' ? freeThrowsOf(rounds) : rounds;
  const found = pairsOf(rounds, asked, options);
  const pairs = pairResult(found);
  const pairEvidence = signFlipEvidence(found.played);
  const have = evidenceOf(asked);
  yield 1;
  const felt = feltOf(rounds);
  const study: Study = {
    index,
    verdict: verdictOf(index, found.fair ? pairEvidence : NO_EVIDENCE, have),
    have,
    pairs,
    pairsFair: found.fair,
    pairEvidence,
    dayEvidence: options.hyper ? null : conditionalEvidence(strataByDay(asked)),
    disagrees: found.fair && index.kind === 'index' && disagree(pairs, dropForPairs(index, asked, found)),
    felt: { ...felt, dropWithout: dropWithout(rounds, felt, index, options) },
  };
  return { study, data, posterior };
}

/** Neighbours are sought among all rounds, so that leaving shots out makes no new ones. */
function pairsOf(
  rounds: readonly Round[],
  asked: readonly Round[],
  { pairs, mix }: StudyOptions,
): Pairs & { readonly fair: boolean } {
  if (pairs !== 'neighbours') {
    const tossed = playedPairs(asked);
    return { ...tossed, fair: fewStopped(tossed) };
  }
  const neighbours = neighbourPairs(rounds, mix === 'free-throws' ? freeThrowTally : undefined);
  return { ...neighbours, fair: looksTossed(neighbours) };
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
function dropWithout(
  rounds: readonly Round[],
  { line, unfelt }: Felt,
  index: Study['index'],
  options: StudyOptions,
): PointsEstimate | null {
  if (options.hyper || line === null || unfelt.rounds.length === 0 || index.kind === 'none') return null;
  const hyper = index.hyper.mean;
  const without = finish(fitDropInSteps(modelData(rounds, { feltAbove: line }), { ...options, hyper })).index;
  return without.kind === 'index' ? without.overall : null;
}
