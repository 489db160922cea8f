import { assertNever } from '../basics/invariant.ts';
import type { Book } from './book.ts';
import { Draft } from './draft.ts';
import type { EventOf, LogEvent, Parsed } from './envelope.ts';
import { foldRound, importRound } from './foldRound.ts';
import { clearCourt, inPlay, passTurn, startRound } from './foldCourt.ts';

/** The book after these events. Pure: the given book is left as it was. */
export function foldAll(book: Book, events: Iterable<LogEvent>): Book {
  const draft = new Draft(book);
  for (const event of events) apply(draft, event);
  return draft.book;
}

/** The book after one more event. */
export function fold(book: Book, event: LogEvent): Book {
  return foldAll(book, [event]);
}

/** The book after a whole stored log: events of later versions are counted and skipped. */
export function foldParsed(book: Book, log: Iterable<Parsed>): Book {
  const draft = new Draft(book);
  for (const parsed of log) {
    if (parsed.known) apply(draft, parsed.event);
    else draft.skip();
  }
  return draft.book;
}

function apply(draft: Draft, event: LogEvent): void {
  const { book } = draft;
  switch (event.type) {
    case 'ShooterAdded': {
      const { shooter, name, hand, rules, units, demo } = event.body;
      draft.edit('shooters').set(shooter, { id: shooter, name, hand, rules, units, demo });
      return;
    }
    case 'ShooterChanged': {
      const { shooter, ...changed } = event.body;
      const old = book.shooters.get(shooter);
      if (old) draft.edit('shooters').set(shooter, { ...old, ...changed });
      else draft.skip();
      return;
    }
    case 'ShooterRemoved':
      draft.edit('removedShooters').add(event.body.shooter);
      if (inPlay(book).some(({ shooter }) => shooter === event.body.shooter)) clearCourt(draft);
      return;
    case 'AgeTold':
    case 'FavoursAllowed':
      tellAge(draft, event);
      return;
    case 'MixKept': {
      const { shooter, ...kept } = event.body;
      draft.edit('mixes').set(shooter, { ...kept, at: event.at });
      return;
    }
    case 'OwnSpotPlaced':
      draft.edit('ownSpots').set(event.body.spot, { x: event.body.x, y: event.body.y });
      return;
    case 'CardMade': {
      const { card, name, stops } = event.body;
      draft.edit('cards').set(card, { id: card, name, stops });
      return;
    }
    case 'CardRemoved':
      draft.edit('cards').delete(event.body.card);
      return;
    case 'GameMade': {
      const { game, ...made } = event.body;
      draft.edit('games').set(game, { id: game, ...made });
      return;
    }
    case 'GameRemoved':
      draft.edit('games').delete(event.body.game);
      return;
    case 'SessionStarted': {
      const { session, shooter, date } = event.body;
      const key = `${shooter} ${date}`;
      const visit = (book.visits.get(key) ?? 0) + 1;
      draft.edit('visits').set(key, visit);
      draft
        .edit('sessions')
        .set(session, { id: session, shooter, date, label: `${date}/${visit}`, rounds: 0 });
      return;
    }
    case 'BodyAsked': {
      const { session, ...told } = event.body;
      const visit = book.sessions.get(session);
      if (visit) draft.edit('sessions').set(session, { ...visit, body: { ...told, at: event.at } });
      else draft.skip();
      return;
    }
    case 'PairTossed': {
      const { pair, ...laidDown } = event.body;
      draft.edit('pairs').set(pair, { id: pair, ...laidDown });
      return;
    }
    case 'RoundStarted':
      startRound(draft, event);
      return;
    case 'TurnPassed':
      passTurn(draft, event);
      return;
    case 'RoundImported':
      importRound(draft, event);
      return;
    case 'ShotTaken':
    case 'StopCounted':
    case 'TurnExpired':
    case 'EntryRetracted':
    case 'RoundPaused':
    case 'RoundResumed':
    case 'RoundEnded':
    case 'RoundReopened':
    case 'AfterRated':
    case 'StakeSettled':
    case 'StakeReopened':
      foldRound(draft, event);
      return;
    default:
      assertNever(event);
  }
}

/** What stakes are open to a shooter follows from these; whoever comes of age needs no leave. */
function tellAge(draft: Draft, event: EventOf<'AgeTold' | 'FavoursAllowed'>): void {
  const old = draft.book.shooters.get(event.body.shooter);
  if (!old) {
    draft.skip();
    return;
  }
  const { favoursSince: _before, ...rest } = old;
  const shooters = draft.edit('shooters');
  if (event.type === 'FavoursAllowed') {
    shooters.set(old.id, event.body.allowed ? { ...rest, favoursSince: event.at } : rest);
  } else {
    shooters.set(old.id, { ...(event.body.under18 ? old : rest), under18: event.body.under18 });
  }
}
