import type { ShooterId } from '../basics/ids.ts';
import { VISIT_GAP_MS, visitFor, type Moment } from '../log/begin.ts';
import type { Book } from '../log/book.ts';
import type { BodyCheck } from '../pressure/ladder.ts';
import type { Gym } from './gymStore.ts';

/* What a shooter's body says before pressure is put on it: asked once a visit. */

/** The answers of the visit that goes on; null where they are still to be given. */
export function bodyNow(book: Book, shooter: ShooterId, now: Moment): BodyCheck | null {
  const { session, facts } = visitFor(book, shooter, now);
  const visit = facts.length > 0 ? undefined : book.sessions.get(session);
  if (!visit?.body) return null;
  const { at, sore, ill, unslept } = visit.body;
  // Answered, but no shot since: after a while it is another visit.
  if (visit.rounds === 0 && now.at - at >= VISIT_GAP_MS) return null;
  return { sore, ill, unslept };
}

/** Keeps the answers with the visit that goes on, or begins one. */
export function tellBody(gym: Gym, shooter: ShooterId, told: BodyCheck): Promise<boolean> {
  const { session, facts } = visitFor(gym.store.getState().book, shooter, gym.moment());
  return gym.dispatch([...facts, { type: 'BodyAsked', body: { session, ...told } }]);
}
