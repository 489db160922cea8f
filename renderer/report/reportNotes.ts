import type { NoIndexReason } from '../stats/model/chokeIndex.ts';
import type { NeighbourPairs } from '../stats/model/neighbourPairs.ts';
import { LEAST_PRESSURED, LEAST_SESSIONS } from '../stats/reading.ts';
import type { Study } from '../stats/study.ts';
import type { Summary } from '../stats/summary.ts';

/* What a reader should know about the numbers, in plain sentences. */

/** Whose shots are asked about. */
export type ReportMix = 'relaxed' | 'free-throws';

/** On what can be counted and matched. */
export function simpleNotes({ relaxed, pressured, drop }: Summary, mix: ReportMix): string[] {
  const shot = mix === 'free-throws' ? 'free throw' : 'shot';
  if (relaxed.attempts === 0) {
    return [`There is no relaxed ${shot}, so there is nothing to compare with.`];
  }
  if (pressured.attempts === 0) {
    return [`There is no pressured ${shot}, so there is nothing to compare with.`];
  }
  if (!drop) {
    return [
      'No spot and kind of shot was shot both relaxed and pressured by the same shooter, so the drop cannot be told.',
    ];
  }
  const { leftOut } = drop;
  if (leftOut.relaxed + leftOut.pressured === 0) return [];
  return [
    `Left out of the matched drop: ${leftOut.relaxed} relaxed and ${leftOut.pressured} pressured attempts, whose spot ` +
      'and kind of shot were seen in one condition alone.',
  ];
}

/** On one shooter's figures. */
export function shooterNotes(
  summary: Summary,
  study: Study,
  pairs: NeighbourPairs,
  mix: ReportMix,
): string[] {
  const { index } = study;
  const notes = simpleNotes(summary, mix);
  // Where nothing can be matched, that sentence says it all.
  if (index.kind === 'index') {
    if (index.pulled !== null) notes.push(index.pulled);
    notes.push(...index.notes, ...verdictNotes(study));
  } else if (summary.drop) notes.push(noIndex(index.reason, index.seen));
  if (summary.drop) notes.push(...pairNotes(study, pairs), ...feltNotes(study));
  if (mix === 'free-throws') {
    notes.push('All figures are of free throws alone; the model still learns days and form from every shot.');
  }
  return notes;
}

function noIndex(reason: NoIndexReason, seen: number): string {
  switch (reason) {
    case 'no relaxed shot':
    case 'no pressured shot':
    case 'nothing of the mix':
      return `There is ${reason}, so the drop cannot be told.`;
    case 'too little of the mix under pressure':
      return (
        `Only ${Math.round(100 * seen)} % of the relaxed shots are from places that were also shot under pressure. ` +
        'Below half, most of the drop would be guesswork, so it is not told.'
      );
  }
}

function verdictNotes({ verdict, have }: Study): string[] {
  if (verdict.kind !== 'none') return [];
  return [
    `Too early for a verdict: that takes ${LEAST_PRESSURED} pressured shots that can be matched and ` +
      `${LEAST_SESSIONS} sessions with both conditions; here there are ${have.pressured.attempts} and ${have.sessions}.`,
  ];
}

function pairNotes(
  { index, pairs, pairsFair, disagrees }: Study,
  { relaxedFirst }: NeighbourPairs,
): string[] {
  if (pairs.mean === null) {
    return [
      'No relaxed and pressured round with the same shots follow one another in a session, so there are no pairs.',
    ];
  }
  const notes = [
    'Pairs are rounds that follow one another in a session with the same shots, one relaxed and one pressured. A file ' +
      'does not say who decided the order: their exact test and evidence are right only if a coin did.',
  ];
  if (!pairsFair) {
    notes.push(
      `The relaxed round came first in ${relaxedFirst} of ${pairs.n} pairs, which a coin seldom does. Warming up or ` +
        'tiring may pass for pressure there: do not trust the test of the pairs. The verdict does not rest on it.',
    );
  }
  if (disagrees && index.kind === 'index') {
    notes.push(
      `Pairs and model tell different stories: ${pairs.mean.toFixed(1)} and ${index.overall.points.toFixed(1)} points. ` +
        'If a coin decided the order, believe the pairs.',
    );
  }
  return notes;
}

function feltNotes({ felt: { line, felt, unfelt } }: Study): string[] {
  if (line === null || unfelt.rounds.length === 0) return [];
  const rated = felt.rounds.length + unfelt.rounds.length;
  return [
    `In ${unfelt.rounds.length} of ${rated} pressured rounds with a rating, nerves did not rise above ${line.before}, the ` +
      'middle of the relaxed rounds: no pressure was felt.',
  ];
}
