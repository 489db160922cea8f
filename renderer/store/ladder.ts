import type { ShooterId } from '../basics/ids.ts';
import { attemptsOn } from '../court/cards.ts';
import type { Book, Round } from '../log/book.ts';
import { roundTally } from '../log/roundCells.ts';
import {
  HARD_NERVES,
  rungOf,
  standingOn,
  stepsUp,
  type LadderSession,
  type Rung,
  type Standing,
} from '../pressure/ladder.ts';
import { fixedLength } from '../stats/fixedLength.ts';
import type { Felt } from '../stats/model/felt.ts';
import { shooterFigures } from './figures.ts';
import { forecastBefore } from './forecast.ts';

/* What the record says of the consequence ladder. */

/** In a session the shot held where at most this share of its rounds fell below their spans. Our own choice. */
const MAY_FALL = 1 / 3;

const known = new WeakMap<Book['rounds'], Map<ShooterId, Standing | null>>();

/** Where a shooter stands on the ladder; null before their first pressured round. Kept while the rounds stay the same. */
export function ladderStanding(book: Book, shooter: ShooterId): Standing | null {
  const standings = known.get(book.rounds) ?? new Map<ShooterId, Standing | null>();
  known.set(book.rounds, standings);
  let standing = standings.get(shooter);
  if (standing === undefined) {
    standing = standingOn(laddered(book, shooter));
    standings.set(shooter, standing);
  }
  return standing;
}

/** The rung a round was played on; one from before there was a ladder goes by how it was set up. */
function rungPlayed({ pressure }: Round): Rung {
  const seen = pressure?.ingredients.includes('watchers') ? 'watched' : 'nobody';
  return pressure?.rung ?? rungOf({ stake: pressure?.stake ?? null, seen });
}

/** Sessions with pressured rounds, newest first; each is worked out only once it is asked for. */
function* laddered(book: Book, shooter: ShooterId): Generator<LadderSession> {
  const { rounds, felt } = shooterFigures(book, shooter);
  // A round from a file does not say what it led to.
  const pressured = rounds.filter(
    (round) => round.condition === 'pressured' && round.pressure && roundTally(round).attempts > 0,
  );
  const sessions = new Map<string, Round[]>();
  for (const round of pressured) {
    sessions.set(round.session, [...(sessions.get(round.session) ?? []), round]);
  }
  for (const session of sessions.values()) yield ladderSession(book, session, felt);
}

function ladderSession(book: Book, rounds: readonly Round[], felt: Felt): LadderSession {
  const rung = rounds
    .map((round) => rungPlayed(round))
    .reduce((highest, one) => (stepsUp(highest, one) > 0 ? one : highest));
  const rose = roseIn(rounds, felt);
  return {
    rung,
    rose,
    // A forecast takes a while, so it is asked for only where it decides something.
    held: rose === true ? heldIn(book, rounds) : null,
    hurt: rounds.some(
      (round) => round.tooMuch ?? (hardest(round) >= HARD_NERVES && fell(book, round) === true),
    ),
  };
}

/** Whether nerves rose above the shooter's usual relaxed ones (stats/model/felt.ts) in any round of a session. */
function roseIn(rounds: readonly Round[], { felt, unfelt }: Felt): boolean | null {
  if (rounds.some(({ id }) => felt.rounds.includes(id))) return true;
  return rounds.some(({ id }) => unfelt.rounds.includes(id)) ? false : null;
}

function heldIn(book: Book, rounds: readonly Round[]): boolean | null {
  const told = rounds.map((round) => fell(book, round)).filter((one) => one !== null);
  if (told.length === 0) return null;
  return told.filter(Boolean).length <= told.length * MAY_FALL;
}

function hardest({ nerves, nervesAfter }: Round): number {
  return Math.max(nerves ?? 0, nervesAfter ?? 0);
}

const falls = new WeakMap<Round, boolean | null>();

/**
 * Whether a round's makes fell below the span that was forecast for it under pressure, which reckons with the shooter's
 * usual drop and with good and bad days; null where there is none: the card was not shot to its end, or makes and misses
 * decided how long the game went on. Worked out once for a round and not again when an earlier one is corrected.
 */
function fell(book: Book, round: Round): boolean | null {
  let told = falls.get(round);
  if (told === undefined) {
    const { makes, attempts } = roundTally(round);
    const whole = fixedLength(round) && attempts === attemptsOn(round.stops);
    const forecast = whole ? forecastBefore(book, round) : null;
    told = forecast ? makes < forecast.low : null;
    falls.set(round, told);
  }
  return told;
}
