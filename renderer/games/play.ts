import { present } from '../basics/invariant.ts';
import type { Round } from '../log/book.ts';
import type { Ending, MissSide } from '../log/events.ts';
import type { Fact } from '../log/facts.ts';
import { nextTurn, turnsOf } from '../log/roundCells.ts';
import { nextStop, restOf, sharesGame } from './gameOn.ts';
import { lastAt, nextInGroup, turnOf } from './group.ts';

/* What a tap on the court means: the facts to log. An empty list means there is nothing to log. */

/**
 * The next shot, as the card or the game has it; the last one also ends the round, and in a group the turn passes.
 *
 * @param others the other rounds of its group, all of them, over or not
 */
export function shotFacts(
  round: Round,
  made: boolean,
  side: MissSide | null,
  others: readonly Round[] = [],
): Fact[] {
  const stop = nextStop(round, others);
  if (stop === null || round.state === 'ended') return [];
  const shot: Fact = {
    type: 'ShotTaken',
    body: { round: round.id, stop, made, side: made ? null : side },
  };
  return [shot, ...whatFollows(withShot(round, stop, made), others)];
}

/**
 * The turns still open at a stop, as a count: "3 of 5". Only for rounds that are shot card by card.
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
  const { used, all } = turnsOf(round);
  return [
    { type: 'StopCounted', body: { round: round.id, stop: turn.stop, makes, attempts } },
    ...(used + attempts < all ? [] : [endOf(round, 'played-out')]),
  ];
}

/** The shot clock took the turn. */
export function expiredFacts(round: Round, others: readonly Round[] = []): Fact[] {
  const stop = nextStop(round, others);
  if (stop === null || round.state === 'ended') return [];
  const expired: Fact = { type: 'TurnExpired', body: { round: round.id, stop } };
  return [expired, ...whatFollows(withShot(round, stop, null), others)];
}

/**
 * Takes back the last thing done, by whoever of the group did it. What was ended by itself goes on with all its entries,
 * an ended round without the one that ended it. A round the device broke off stays so; imported rounds are corrected in
 * their file.
 */
export function undoFacts(round: Round, others: readonly Round[] = []): Fact[] {
  const all = [round, ...others];
  if (all.some(({ ending, imported }) => imported || ending === 'interrupted')) return [];
  const stopped = stoppedLast(all);
  return stopped.length > 0 ? takenUpFacts(stopped, round, all) : retractFacts(round, others);
}

/** The rounds that were ended by hand since the last entry: all of a group, or that of one who had to go. */
export function stoppedLast(all: readonly Round[]): Round[] {
  const at = Math.max(...all.map((one) => (one.ending === 'stopped' ? (one.endedAt ?? 0) : -Infinity)));
  if (at <= Math.max(...all.map(lastAt))) return [];
  return all.filter(({ ending, endedAt }) => ending === 'stopped' && endedAt === at);
}

/** What was ended by hand goes on, with the one whose turn it was. */
function takenUpFacts(stopped: readonly Round[], round: Round, all: readonly Round[]): Fact[] {
  const again = all.map((one): Round =>
    stopped.includes(one) ? { ...one, state: 'paused', ending: null } : one,
  );
  const turn = turnOf(again);
  const byTurn = stopped.toSorted((a, b) => Number(b.id === turn.id) - Number(a.id === turn.id));
  const waits = round.state !== 'ended' && stopped.some(({ id }) => id === turn.id);
  return [...byTurn.map(reopen), ...(waits ? [passTo(turn)] : [])];
}

function retractFacts(round: Round, others: readonly Round[]): Fact[] {
  const all = [round, ...others];
  const latest = all.reduce((last, one) => (lastAt(one) > lastAt(last) ? one : last));
  const last = latest.entries.at(-1);
  const retracted: Fact[] = last
    ? [{ type: 'EntryRetracted', body: { round: latest.id, entry: last.id } }]
    : [];
  const passed: Fact[] = latest.id === round.id ? [] : [passTo(latest)];
  if (latest.state !== 'ended') return [...passed, ...retracted];
  // The round whose turn it was goes on court first; those that ended with it go on waiting.
  const together = all.filter((one) => one.state === 'ended' && one.endedAt === latest.endedAt);
  const reopened = [latest, ...restOf(latest, together)].map(reopen);
  const byEntry = nextStop(latest, restOf(latest, all)) === null || last?.at === latest.endedAt;
  // Reopened beside one that is on court it waits; then the turn has to be passed back to it.
  const back = round.state === 'ended' ? [] : passed;
  return [...reopened, ...back, ...(byEntry ? retracted : [])];
}

/** Every round of the group ends. Where each shooter has a game and a clock alone, time that is up ends only that one. */
export function endFacts(round: Round, why: Ending, others: readonly Round[] = []): Fact[] {
  if (why === 'time-up' && round.group?.turns === 'game') {
    const next = nextInGroup(round, others, true);
    return [endOf(round, why), ...(next ? [passTo(next)] : [])];
  }
  return [round, ...others].filter(({ state }) => state !== 'ended').map((one) => endOf(one, why));
}

/**
 * One shooter of a group has to go: their round ends early, and the others play on. A duel cannot go on, so it ends for
 * both.
 *
 * @param round the one on court
 * @param leaver whoever goes: the one on court or one of the others
 */
export function leaveFacts(round: Round, leaver: Round, others: readonly Round[]): Fact[] {
  if (leaver.state === 'ended') return [];
  if (sharesGame(round)) return endFacts(round, 'stopped', others);
  const next = leaver.id === round.id ? nextInGroup(round, others, true) : null;
  return [endOf(leaver, 'stopped'), ...(next ? [passTo(next)] : [])];
}

/** What the rest of the group does after a turn of `round`, which is given as it is after it. */
function whatFollows(round: Round, others: readonly Round[]): Fact[] {
  const over = nextStop(round, others) === null;
  if (round.group === null) return over ? [endOf(round, 'played-out')] : [];
  // A duel is over for both at once.
  if (over && sharesGame(round)) return endFacts(round, 'played-out', others);
  const next = nextInGroup(round, others, over);
  return [...(over ? [endOf(round, 'played-out')] : []), ...(next === null ? [] : [passTo(next)])];
}

/** @param made null for a turn the clock took */
function withShot(round: Round, stop: number, made: boolean | null): Round {
  const entry =
    made === null
      ? ({ kind: 'expired', id: 'next', at: round.startedAt, stop } as const)
      : ({ kind: 'shot', id: 'next', at: round.startedAt, stop, made, side: null } as const);
  return { ...round, entries: [...round.entries, entry] };
}

function endOf(round: Round, why: Ending): Fact {
  return { type: 'RoundEnded', body: { round: round.id, why, clockLeft: null } };
}

function reopen({ id }: Round): Fact {
  return { type: 'RoundReopened', body: { round: id } };
}

function passTo(round: Round): Fact {
  return { type: 'TurnPassed', body: { round: round.id } };
}
