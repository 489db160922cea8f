import { at } from '../matrix.ts';
import type { Figures } from './indexOf.ts';
import type { ModelData } from './modelData.ts';

/** Up to about here the estimate is visibly pulled towards 0. */
export const STILL_PULLED = 200;

/** Said of an index of few pressured shots; null from {@link STILL_PULLED} on. */
export function pulledNote({ weeks }: Pick<Figures, 'weeks'>): string | null {
  const pressured = weeks.reduce((sum, week) => sum + week.shots.pressured, 0);
  if (pressured >= STILL_PULLED) return null;
  return `With ${pressured} pressured shots the estimate is still pulled towards 0; from about ${STILL_PULLED} on the shots decide.`;
}

/** What else a reader should know about an index, in plain sentences. */
export function notesOn(data: ModelData, { weeks, seen, ratio, places }: Figures): string[] {
  const notes: string[] = [];
  const { both, single } = sessionKinds(data);
  if (single > 0) {
    notes.push(
      `${single} of ${both + single} sessions saw one condition alone. They tell about skill, hardly about the drop.`,
    );
  }
  // The share alone may miss 1 by a rounding of the machine, or round to it.
  const unseen = places.filter(({ raw }) => raw.pressured.attempts === 0).length;
  if (unseen > 0) {
    notes.push(
      `${seen > 0.995 ? 'Over 99' : Math.round(100 * seen)} % of the mix was ever shot under pressure; ${unseen === 1 ? 'one place is' : `${unseen} places are`} judged by the others.`,
    );
  }
  const empty = weeks.filter((week) => week.empty).length;
  if (empty > 0)
    notes.push(
      `${empty === 1 ? 'One week' : `${empty} weeks`} without a shot: there the band is only carried over.`,
    );
  if (ratio === null) notes.push('Fewer than one relaxed shot in five goes in, so no ratio is given.');
  for (const { reason, shots, rounds } of data.leftOut) {
    if (reason !== 'no shot') notes.push(`Left out, ${reason}: ${rounds.length} rounds with ${shots} shots.`);
  }
  return notes;
}

function sessionKinds({ sessions, cells }: ModelData): { both: number; single: number } {
  let both = 0;
  for (let session = 0; session < sessions.count; session += 1) {
    const seen = new Set<number>();
    for (let cell = at(sessions.start, session); cell < at(sessions.start, session + 1); cell += 1) {
      seen.add(at(cells.pressured, cell));
    }
    if (seen.size === 2) both += 1;
  }
  return { both, single: sessions.count - both };
}
