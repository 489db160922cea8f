import type { ShotKind, SpotName } from '../court/spots.ts';
import type { Tally } from '../log/roundCells.ts';
import type { ByCondition } from '../stats/drop.ts';
import type { ChokeIndex, IndexWeek } from '../stats/model/chokeIndex.ts';
import type { Estimate, PointsEstimate } from '../stats/model/estimate.ts';
import type { FeltRounds } from '../stats/model/felt.ts';
import type { NeighbourPairs } from '../stats/model/neighbourPairs.ts';
import type { Spreads } from '../stats/model/priors.ts';
import type { Verdict } from '../stats/model/verdict.ts';
import type { ShotGroup } from '../stats/shotGroups.ts';
import type { Study } from '../stats/study.ts';
import { fourDigits, hundredths, tenThousandths } from './round.ts';
import type { ReportSpan } from './simpleFigures.ts';

/* What the full model says of one shooter, and what pairs say beside it. All intervals at 90 %. */

export interface ReportDrop extends ReportSpan {
  readonly sd: number;
  /** Chance that it is above 0. */
  readonly probability: number;
}

/** Make percentages over the mix, fresh and warm, on a typical day. */
interface Standardised {
  readonly relaxed: number;
  readonly pressured: number;
}

/** Single numbers are null where they cannot be told, lists are empty. */
export interface ModelFigures {
  readonly drop: (ReportDrop & Standardised) | null;
  readonly verdict: VerdictWords | null;
  /** Pressured over relaxed make rate; null also where the relaxed rate is below 20 %. */
  readonly ratio: number | null;
  readonly ratioSpan: Omit<Estimate, 'value'> | null;
  /** From the first week to the last; negative = the drop shrank. Null within one week. */
  readonly change: (ReportDrop & { readonly from: string; readonly to: string }) | null;
  /** Neighbouring rounds with the same shots, one relaxed and one pressured. */
  readonly pairs: ReportPairs | null;
  /** Bets against "pressure does nothing" that may be looked at every day: on the pairs, and day by day on all shots. */
  readonly evidence: { readonly e: number; readonly highest: number; readonly byDay: number | null } | null;
  /** Pairs and model are further apart than chance explains, and a coin could have ordered the pairs. */
  readonly disagrees: boolean | null;
  readonly felt: ReportFelt | null;
  /** Share of the mix that was ever shot under pressure. */
  readonly seen: number | null;
  readonly groups: readonly (ReportDrop & { readonly group: ShotGroup; readonly weight: number })[];
  readonly places: readonly ReportPlace[];
  readonly weeks: readonly ReportWeek[];
  /** Spreads in log-odds, posterior means with their standard deviations. */
  readonly hyper: (Spreads & { readonly sd: Spreads }) | null;
  /** What decided the draws. */
  readonly seed: number | null;
}

export interface ReportPairs {
  readonly n: number;
  /** Points. */
  readonly mean: number | null;
  readonly se: number | null;
  /** Exact one-sided sign-flip test. */
  readonly p: number | null;
  /** Pairs in which the relaxed round came first. */
  readonly relaxedFirst: number;
  /** Pressured rounds without a partner. */
  readonly leftOut: number;
}

/** Pressured rounds by whether nerves rose above the median of the relaxed ones. */
interface ReportFelt {
  readonly line: number | null;
  readonly felt: FeltTally;
  readonly unfelt: FeltTally;
  readonly unrated: FeltTally;
  /** The drop without the rounds in which nothing was felt; null where there is none, or no drop without them. */
  readonly dropWithout: ReportDrop | null;
}

interface FeltTally extends Tally {
  readonly rounds: number;
}

interface ReportPlace extends ReportDrop, Standardised {
  readonly spot: SpotName;
  readonly shot: ShotKind;
  /** Share of the mix. */
  readonly weight: number;
  /** As it was shot; all else is pulled towards what the other places say. */
  readonly raw: ByCondition<Tally>;
}

interface ReportWeek extends ReportDrop, Standardised {
  /** ISO 8601 name, `2026-W05`. */
  readonly week: string;
  /** Shots in it; a week without is only carried over from its neighbours. */
  readonly shots: ByCondition<number>;
}

export type VerdictWords = 'none' | `${'likely' | 'clear'} ${'drop' | 'gain'}` | 'about the same' | 'unclear';

/** What the model gives where it is not asked: for several shooters thrown together. */
export const NOT_TOLD: ModelFigures = {
  drop: null,
  verdict: null,
  ratio: null,
  ratioSpan: null,
  change: null,
  pairs: null,
  evidence: null,
  disagrees: null,
  felt: null,
  seen: null,
  groups: [],
  places: [],
  weeks: [],
  hyper: null,
  seed: null,
};

/** @param pairs those the study was given */
export function modelFigures(study: Study, pairs: NeighbourPairs): ModelFigures {
  const { index, pairEvidence, dayEvidence } = study;
  return {
    ...NOT_TOLD,
    ...(index.kind === 'index' ? indexFigures(index) : { seen: tenThousandths(index.seen) }),
    verdict: verdictWords(study.verdict),
    pairs: pairsOf(study, pairs),
    evidence: {
      e: fourDigits(pairEvidence.e),
      highest: fourDigits(pairEvidence.highest),
      byDay: dayEvidence && fourDigits(dayEvidence.e),
    },
    disagrees: study.disagrees,
    felt: feltOf(study.felt),
  };
}

function indexFigures(index: ChokeIndex): Partial<ModelFigures> {
  const { overall, ratio, change, hyper } = index;
  return {
    drop: { ...dropOf(overall), ...standardised(index) },
    ratio: ratio && tenThousandths(ratio.value),
    ratioSpan: ratio && {
      low: tenThousandths(ratio.low),
      high: tenThousandths(ratio.high),
      sd: tenThousandths(ratio.sd),
    },
    change: change && { from: change.from, to: change.to, ...dropOf(change) },
    seen: tenThousandths(index.seen),
    groups: index.groups.map((group) => ({
      group: group.group,
      weight: tenThousandths(group.weight),
      ...dropOf(group),
    })),
    places: index.places.map((place) => ({
      spot: place.spot,
      shot: place.shot,
      weight: tenThousandths(place.weight),
      raw: place.raw,
      ...standardised(place),
      ...dropOf(place),
    })),
    weeks: index.weeks.map(weekOf),
    hyper: { ...spreadsOf(hyper.mean), sd: spreadsOf(hyper.sd) },
    seed: index.seed,
  };
}

function weekOf(week: IndexWeek): ReportWeek {
  return { week: week.week, ...standardised(week), ...dropOf(week), shots: week.shots };
}

function verdictWords(verdict: Verdict): VerdictWords {
  switch (verdict.kind) {
    case 'drop':
    case 'gain':
      return `${verdict.sure} ${verdict.kind}`;
    case 'same':
      return 'about the same';
    case 'none':
    case 'unclear':
      return verdict.kind;
  }
}

function pairsOf({ pairs }: Study, { relaxedFirst }: NeighbourPairs): ReportPairs {
  const { n, mean, se, p, leftOut } = pairs;
  return {
    n,
    mean: mean === null ? null : hundredths(mean),
    se: se === null ? null : hundredths(se),
    p: p === null ? null : fourDigits(p),
    relaxedFirst,
    leftOut,
  };
}

function feltOf({ line, felt, unfelt, unrated, dropWithout }: Study['felt']): ReportFelt {
  return {
    line: line && line.before,
    felt: feltTally(felt),
    unfelt: feltTally(unfelt),
    unrated: feltTally(unrated),
    dropWithout: dropWithout && dropOf(dropWithout),
  };
}

function feltTally({ rounds, makes, attempts }: FeltRounds): FeltTally {
  return { rounds: rounds.length, makes, attempts };
}

function dropOf({ points, low, high, sd, probability }: PointsEstimate): ReportDrop {
  return {
    points: hundredths(points),
    low: hundredths(low),
    high: hundredths(high),
    sd: hundredths(sd),
    probability: tenThousandths(probability),
  };
}

function standardised({ relaxed, pressured }: Standardised): Standardised {
  return { relaxed: hundredths(relaxed), pressured: hundredths(pressured) };
}

function spreadsOf(spreads: Spreads): Spreads {
  const { skill, day, week, dayPressure } = spreads;
  return {
    skill: tenThousandths(skill),
    day: tenThousandths(day),
    week: tenThousandths(week),
    dayPressure: tenThousandths(dayPressure),
  };
}
