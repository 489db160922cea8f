import { present } from '../basics/invariant.ts';
import type { Round } from '../log/book.ts';
import type { Ending, MissSide } from '../log/events.ts';
import type { Fact } from '../log/facts.ts';
import { nextTurn, turnsOf } from '../log/roundCells.ts';
import { gameOn, nextStop } from './gameOn.ts';
import { nextInGroup } from './group.ts';

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
 * Takes back the last thing done, by whoever of the group did it. An ended round goes on: without its last entry where
 * that entry ended it, with all of them where it was ended by itself. A round the device broke off stays so; imported
 * rounds are corrected in their file.
 */
export function undoFacts(round: Round, others: readonly Round[] = []): Fact[] {
  const latest = [round, ...others].reduce((last, one) => (lastAt(one) > lastAt(last) ? one : last));
  if (latest.imported || [round, ...others].some(({ ending }) => ending === 'interrupted')) return [];
  const last = latest.entries.at(-1);
  const retracted: Fact[] = last
    ? [{ type: 'EntryRetracted', body: { round: latest.id, entry: last.id } }]
    : [];
  const passed: Fact[] = latest.id === round.id ? [] : [{ type: 'TurnPassed', body: { round: latest.id } }];
  if (latest.state !== 'ended') return [...passed, ...retracted];
  // The round whose turn it was goes on court first; those that ended with it go on waiting.
  const together = others.filter((one) => one.state === 'ended' && one.endedAt === latest.endedAt);
  const reopened = [latest, ...together.filter(({ id }) => id !== latest.id)].map((one): Fact => ({
    type: 'RoundReopened',
    body: { round: one.id },
  }));
  const byEntry =
    nextStop(
      latest,
      others.filter(({ id }) => id !== latest.id),
    ) === null || last?.at === latest.endedAt;
  // Reopened beside one that is on court it waits; then the turn has to be passed back to it.
  const back = round.state === 'ended' ? [] : passed;
  return [...reopened, ...back, ...(byEntry ? retracted : [])];
}

/** Every round of the group ends. Where each shooter has a game and a clock alone, time that is up ends only that one. */
export function endFacts(round: Round, why: Ending, others: readonly Round[] = []): Fact[] {
  if (why === 'time-up' && round.group?.turns === 'game') {
    const next = nextInGroup(round, others, true);
    return [endOf(round, why), ...(next ? [{ type: 'TurnPassed', body: { round: next.id } } as const] : [])];
  }
  return [round, ...others].filter(({ state }) => state !== 'ended').map((one) => endOf(one, why));
}

/** What the rest of the group does after a turn of `round`, which is given as it is after it. */
function whatFollows(round: Round, others: readonly Round[]): Fact[] {
  const over = nextStop(round, others) === null;
  if (round.group === null) return over ? [endOf(round, 'played-out')] : [];
  // A duel is over for both at once.
  if (over && gameOn(round, others)?.plan.family === 'duel') return endFacts(round, 'played-out', others);
  const next = nextInGroup(round, others, over);
  return [
    ...(over ? [endOf(round, 'played-out')] : []),
    ...(next === null ? [] : [{ type: 'TurnPassed', body: { round: next.id } } as const]),
  ];
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

function lastAt(round: Round): number {
  return round.entries.at(-1)?.at ?? -Infinity;
}
