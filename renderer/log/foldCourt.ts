import type { Book, Round } from './book.ts';
import type { Draft } from './draft.ts';
import type { EventOf } from './envelope.ts';

/* Which rounds are being played. One is on court; in a group the others wait for their turn. */

/** How a round is before its first shot. */
export const FRESH = {
  entries: [],
  state: 'playing',
  clockLeft: null,
  pausedBy: null,
  ending: null,
  endedAt: null,
  nervesAfter: null,
  effort: null,
  note: '',
  settled: false,
} as const;

/** Every round that is being played, the one on court first. */
export function inPlay({ open, waiting }: Pick<Book, 'open' | 'waiting'>): Round[] {
  return [...(open ? [open] : []), ...waiting.values()];
}

/** Takes every round off the court as it stands. */
export function clearCourt(draft: Draft): void {
  for (const round of inPlay(draft.book)) draft.edit('rounds').set(round.id, round);
  draft.edit('waiting').clear();
  draft.setOpen(null);
}

export function startRound(draft: Draft, event: EventOf<'RoundStarted'>): void {
  const { round, session, shooter, condition, card, entry, first, nerves, pair, pressure } = event.body;
  const group = event.body.group ?? null;
  const { book } = draft;
  const { open, rounds } = book;
  const visit = book.sessions.get(session);
  if (!visit || rounds.has(round) || inPlay(book).some(({ id }) => id === round)) {
    draft.skip();
    return;
  }
  const together = group !== null && open?.group?.id === group.id;
  if (open && !together) clearCourt(draft);
  draft.edit('sessions').set(session, { ...visit, rounds: visit.rounds + 1 });
  const started: Round = {
    ...FRESH,
    id: round,
    shooter,
    session,
    date: visit.date,
    label: String(visit.rounds + 1),
    startedAt: event.at,
    condition,
    game: pressure?.game?.name ?? card.name,
    stops: card.stops,
    card: card.id,
    entry,
    first,
    nerves,
    pair: pair ? { id: pair.id, place: pair.place } : null,
    pressure,
    group,
    imported: false,
  };
  if (together) draft.edit('waiting').set(round, started);
  else draft.setOpen(started);
}

/** The turn goes to another round of the group; the one on court waits. */
export function passTurn(draft: Draft, { body }: EventOf<'TurnPassed'>): void {
  const { open, waiting } = draft.book;
  const next = waiting.get(body.round);
  if (!next) {
    draft.skip();
    return;
  }
  const others = draft.edit('waiting');
  others.delete(next.id);
  if (open) others.set(open.id, open);
  draft.setOpen(next);
}

/** Puts a round that is played back where it was; one that was over goes on court, or waits for its group. */
export function putOnCourt(draft: Draft, round: Round): void {
  const { open, rounds } = draft.book;
  if (rounds.has(round.id)) draft.edit('rounds').delete(round.id);
  if (open === null || open.id === round.id) draft.setOpen(round);
  else draft.edit('waiting').set(round.id, round);
}

/** Puts a round among those that are over. */
export function leaveCourt(draft: Draft, round: Round): void {
  const { open, waiting } = draft.book;
  if (waiting.has(round.id)) draft.edit('waiting').delete(round.id);
  if (open?.id === round.id) draft.setOpen(null);
  draft.edit('rounds').set(round.id, round);
}
