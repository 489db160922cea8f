import { present } from '../basics/invariant.ts';
import type { Round } from './book.ts';
import type { MissSide } from './events.ts';
import type { Fact } from './facts.ts';
import { nextTurn, turnsOf } from './roundCells.ts';

/* What a tap on the court means: the facts to log. An empty list means there is nothing to log. */

/** The next shot in card order; the card's last turn also ends the round. */
export function shotFacts(round: Round, made: boolean, side: MissSide | null): Fact[] {
  const turn = nextTurn(round);
  if (!turn || round.state === 'ended') return [];
  const shot: Fact = {
    type: 'ShotTaken',
    body: { round: round.id, stop: turn.stop, made, side: made ? null : side },
  };
  return withEnding(round, shot, 1);
}

/**
 * The turns still open at a stop, as a count: "3 of 5".
 *
 * @param taken how many of them were taken, where the clock cut the stop short; all of them without it
 * @throws RangeError where there are more makes than turns; the message can be shown
 */
export function countFacts(round: Round, makes: number, taken?: number): Fact[] {
  const turn = nextTurn(round);
  if (!turn || round.state === 'ended') return [];
  const left = present(round.stops[turn.stop], 'the stop').attempts - turn.turn;
  const attempts = taken ?? left;
  if (!Number.isInteger(makes) || makes < 0 || makes > attempts || attempts > left || attempts < 1) {
    throw new RangeError(`Makes here run from 0 to ${left}.`);
  }
  return withEnding(
    round,
    { type: 'StopCounted', body: { round: round.id, stop: turn.stop, makes, attempts } },
    attempts,
  );
}

/** The shot clock took the turn. */
export function expiredFacts(round: Round): Fact[] {
  const turn = nextTurn(round);
  if (!turn || round.state === 'ended') return [];
  return withEnding(round, { type: 'TurnExpired', body: { round: round.id, stop: turn.stop } }, 1);
}

/**
 * Takes back the last thing done. An ended round goes on: without its last entry where that entry ended it, with all of
 * them where it was ended by itself. A round the device broke off stays so; imported rounds are corrected in their file.
 */
export function undoFacts(round: Round): Fact[] {
  const last = round.entries.at(-1);
  if (round.imported || round.ending === 'interrupted') return [];
  const retracted: Fact[] = last
    ? [{ type: 'EntryRetracted', body: { round: round.id, entry: last.id } }]
    : [];
  if (round.state !== 'ended') return retracted;
  const reopened: Fact = { type: 'RoundReopened', body: { round: round.id } };
  const byEntry = nextTurn(round) === null || last?.at === round.endedAt;
  return byEntry ? [reopened, ...retracted] : [reopened];
}

function withEnding(round: Round, entry: Fact, turns: number): Fact[] {
  const { used, all } = turnsOf(round);
  if (used + turns < all) return [entry];
  return [entry, { type: 'RoundEnded', body: { round: round.id, why: 'played-out', clockLeft: null } }];
}
