import { assertNever } from '../basics/invariant.ts';
import type { EpochMs } from '../basics/units.ts';
import type { Entry, Round } from './book.ts';
import type { Draft } from './draft.ts';
import type { EventOf } from './envelope.ts';
import { FRESH, inPlay, leaveCourt, putOnCourt } from './foldCourt.ts';
import { turnsUsed } from './roundCells.ts';

type RoundEvent = EventOf<
  | 'ShotTaken'
  | 'StopCounted'
  | 'TurnExpired'
  | 'EntryRetracted'
  | 'RoundPaused'
  | 'RoundResumed'
  | 'RoundEnded'
  | 'RoundReopened'
  | 'AfterRated'
  | 'StakeSettled'
  | 'StakeReopened'
>;

export function importRound(draft: Draft, event: EventOf<'RoundImported'>): void {
  const { round, shooter, date, session, label, condition, game, cells, first, nerves, note } = event.body;
  const before = draft.book.rounds.get(round);
  // Told anew it is a correction; a round shot in the app is never overwritten by a file.
  if (inPlay(draft.book).some(({ id: known }) => known === round) || (before && !before.imported)) {
    draft.skip();
    return;
  }
  const id = `file ${shooter} ${date} ${session}`;
  const visit = draft.book.sessions.get(id) ?? { id, shooter, date, label: session, rounds: 0 };
  draft.edit('sessions').set(id, before ? visit : { ...visit, rounds: visit.rounds + 1 });
  draft.edit('rounds').set(round, {
    ...FRESH,
    id: round,
    shooter,
    session: id,
    date,
    label,
    startedAt: before?.startedAt ?? event.at,
    condition,
    game,
    stops: cells.map(({ spot, shot, attempts }) => ({ spot, shot, attempts })),
    card: null,
    entry: 'counts',
    first,
    nerves,
    pair: null,
    pressure: null,
    group: null,
    entries: cells.map(({ makes, attempts }, stop) => ({
      kind: 'count',
      id: event.id,
      at: event.at,
      stop,
      makes,
      attempts,
    })),
    state: 'ended',
    ending: 'played-out',
    note,
    imported: true,
  });
}

/** Applies an event to the round it names, open or over; an event for no known round is skipped. */
export function foldRound(draft: Draft, event: RoundEvent): void {
  const { open, waiting, rounds } = draft.book;
  const id = event.body.round;
  const onCourt = open?.id === id ? open : waiting.get(id);
  const round = onCourt ?? rounds.get(id);
  // A round goes back on court only where no other is being played, but for one of its own group.
  const noRoom = event.type === 'RoundReopened' && open !== null && !sameGroup(open, round);
  const next = round && !noRoom && changed(round, event);
  if (!next) {
    draft.skip();
    return;
  }
  const plays = next.state !== 'ended' && (onCourt !== undefined || event.type === 'RoundReopened');
  if (plays) putOnCourt(draft, next);
  else leaveCourt(draft, next);
}

function sameGroup(open: Round, round: Round | undefined): boolean {
  return open.group !== null && open.group.id === round?.group?.id;
}

/** The round after the event, or null where the event does not fit it. */
function changed(round: Round, event: RoundEvent): Round | null {
  switch (event.type) {
    case 'ShotTaken': {
      const { stop, made, side, clockLeft } = event.body;
      return withEntry(
        clockAt(round, clockLeft),
        { kind: 'shot', id: event.id, at: event.at, stop, made, side: made ? null : side },
        1,
      );
    }
    case 'StopCounted': {
      const { stop, makes, attempts, clockLeft } = event.body;
      return withEntry(
        clockAt(round, clockLeft),
        { kind: 'count', id: event.id, at: event.at, stop, makes, attempts },
        attempts,
      );
    }
    case 'TurnExpired':
      return withEntry(round, { kind: 'expired', id: event.id, at: event.at, stop: event.body.stop }, 1);
    case 'EntryRetracted': {
      // An ended round keeps its shots: it is opened again first.
      if (round.imported || round.state === 'ended') return null;
      const entries = round.entries.filter((entry) => entry.id !== event.body.entry);
      return entries.length < round.entries.length ? { ...round, entries } : null;
    }
    case 'RoundPaused':
      return round.state === 'ended'
        ? null
        : {
            ...broken(round, event.at),
            state: 'paused',
            pausedBy: event.body.why,
            clockLeft: event.body.clockLeft,
          };
    case 'RoundResumed':
      return round.state === 'ended'
        ? null
        : { ...broken(round, event.at), state: 'playing', pausedBy: null };
    case 'RoundEnded':
      // The first ending stands: the last shot and the buzzer can come together.
      if (round.state === 'ended') return null;
      return {
        ...round,
        state: 'ended',
        ending: event.body.why,
        endedAt: event.at,
        clockLeft: event.body.clockLeft,
      };
    case 'RoundReopened':
      // The verdict is open again, so whatever was settled on it is not.
      if (round.state !== 'ended' || round.imported) return null;
      return { ...broken(round, event.at), state: 'paused', ending: null, endedAt: null, settled: false };
    case 'AfterRated': {
      const { nerves, effort, note, tooMuch } = event.body;
      const rated = { ...round, nervesAfter: nerves, effort, note };
      return tooMuch === undefined ? rated : { ...rated, tooMuch };
    }
    case 'StakeSettled':
      return { ...round, settled: true };
    case 'StakeReopened':
      return { ...round, settled: false };
    default:
      return assertNever(event);
  }
}

/** The round with a moment at which play stood still. */
function broken(round: Round, at: EpochMs): Round {
  return { ...round, breaks: [...(round.breaks ?? []), at] };
}

/** The round with its clock as an entry found it. */
function clockAt(round: Round, clockLeft: number | null | undefined): Round {
  return clockLeft === null || clockLeft === undefined ? round : { ...round, clockLeft };
}

/** Adds an entry where its stop still has that many turns; how long a game goes on is its rule's affair. */
function withEntry(round: Round, entry: Entry, turns: number): Round | null {
  const stop = round.stops[entry.stop];
  if (!stop || round.state === 'ended') return null;
  const full = turnsUsed(round.entries, entry.stop) + turns > stop.attempts;
  if (full && !round.pressure?.game) return null;
  return { ...round, entries: [...round.entries, entry] };
}
