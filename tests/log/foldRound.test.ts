import { describe, expect, it } from 'vitest';

import { present } from '../../renderer/basics/invariant.ts';
import type { Round } from '../../renderer/log/book.ts';
import { shotFacts, undoFacts } from '../../renderer/games/play.ts';
import { roundTally } from '../../renderer/log/roundCells.ts';
import { onCourt, PRESSURE, started, tap, type Diary } from './diary.ts';

const ofRound = (log: Diary): Round => {
  const { open, rounds } = log.book();
  return present(open ?? rounds.get('round 1'), 'a round');
};
const makes = (log: Diary) => roundTally(ofRound(log));
const end = (log: Diary, round = 'round 1') =>
  log.write('RoundEnded', { round, why: 'played-out', clockLeft: null });

describe('shots', () => {
  it('count one by one, and a make has no miss side', () => {
    const log = onCourt();
    log.write('ShotTaken', { round: 'round 1', stop: 0, made: true, side: 'long' });
    log.write('ShotTaken', { round: 'round 1', stop: 0, made: false, side: 'short' });
    expect(log.book().open?.entries).toMatchObject([
      { kind: 'shot', made: true, side: null },
      { kind: 'shot', made: false, side: 'short' },
    ]);
    expect(makes(log)).toEqual({ makes: 1, attempts: 2 });
  });
  it('may come as a count for a stop', () => {
    const log = onCourt();
    log.write('StopCounted', { round: 'round 1', stop: 1, makes: 1, attempts: 2 });
    expect(makes(log)).toEqual({ makes: 1, attempts: 2 });
  });
  it('a turn that the clock took is used up, and no shot', () => {
    const log = onCourt();
    log.write('TurnExpired', { round: 'round 1', stop: 0 });
    tap(log, 'o');
    expect(makes(log)).toEqual({ makes: 1, attempts: 1 });
    // Two of two turns at the top are used: a third is refused.
    log.write('ShotTaken', { round: 'round 1', stop: 0, made: true, side: null });
    expect(log.book().skipped).toBe(1);
  });
  it.each([
    ['beyond the stop’s attempts', { stop: 0, taken: 'oo' }],
    ['at a stop the card does not have', { stop: 2, taken: '' }],
  ])('%s are refused', (_what, { stop, taken }) => {
    const log = onCourt();
    tap(log, taken);
    const before = log.book();
    log.write('ShotTaken', { round: 'round 1', stop, made: true, side: null });
    log.write('StopCounted', { round: 'round 1', stop, makes: 0, attempts: 1 });
    log.write('TurnExpired', { round: 'round 1', stop });
    expect(log.book()).toEqual({ ...before, skipped: 3 });
  });
  it('a count larger than what is left at the stop is refused whole', () => {
    const log = onCourt();
    tap(log, 'o');
    log.write('StopCounted', { round: 'round 1', stop: 0, makes: 2, attempts: 2 });
    expect(makes(log)).toEqual({ makes: 1, attempts: 1 });
  });
  it('after the end are refused', () => {
    const log = onCourt();
    tap(log, 'oo');
    end(log);
    tap(log, 'o');
    expect(makes(log)).toEqual({ makes: 2, attempts: 2 });
    expect(log.book().skipped).toBe(1);
  });
});

describe('taking back', () => {
  it('takes one entry back, wherever it stands', () => {
    const log = onCourt();
    const [first] = tap(log, 'oxo');
    log.write('EntryRetracted', { round: 'round 1', entry: first?.id ?? '' });
    expect(makes(log)).toEqual({ makes: 1, attempts: 2 });
  });
  it('the same entry twice changes nothing more', () => {
    const log = onCourt();
    const [first] = tap(log, 'oo');
    log.write('EntryRetracted', { round: 'round 1', entry: first?.id ?? '' });
    log.write('EntryRetracted', { round: 'round 1', entry: first?.id ?? '' });
    expect(makes(log)).toEqual({ makes: 1, attempts: 1 });
    expect(log.book().skipped).toBe(1);
  });
  it('an ended round goes back on court, paused, its stake open again, without the shot that ended it', () => {
    const log = onCourt({ condition: 'pressured', pressure: { ...PRESSURE, ingredients: [] } });
    tap(log, 'ooo');
    log.tap(shotFacts(ofRound(log), false, 'short'));
    expect(ofRound(log)).toMatchObject({ state: 'ended', ending: 'played-out' });
    log.write('StakeSettled', { round: 'round 1' });
    log.tap(undoFacts(ofRound(log)));
    const { open, rounds, skipped } = log.book();
    expect([rounds.size, skipped]).toEqual([0, 0]);
    expect(open).toMatchObject({
      id: 'round 1',
      state: 'paused',
      ending: null,
      endedAt: null,
      settled: false,
    });
    expect(makes(log)).toEqual({ makes: 3, attempts: 3 });
    tap(log, 'o');
    expect(makes(log)).toEqual({ makes: 4, attempts: 4 });
  });
  it('a round that was ended by hand goes on with all its shots', () => {
    const log = onCourt();
    tap(log, 'ox');
    log.write('RoundEnded', { round: 'round 1', why: 'stopped', clockLeft: null });
    log.tap(undoFacts(ofRound(log)));
    expect(ofRound(log)).toMatchObject({ state: 'paused', ending: null });
    expect(makes(log)).toEqual({ makes: 1, attempts: 2 });
    expect(log.book().skipped).toBe(0);
  });
  it('nothing is taken back from an ended round that was not opened again', () => {
    const log = onCourt();
    const [first] = tap(log, 'oo');
    end(log);
    const before = log.book();
    log.write('EntryRetracted', { round: 'round 1', entry: first?.id ?? '' });
    expect(log.book()).toEqual({ ...before, skipped: 1 });
  });
  it('no round goes back on court while another is being played', () => {
    const log = onCourt();
    end(log);
    log.write('RoundStarted', started({ round: 'round 2' }));
    log.write('RoundReopened', { round: 'round 1' });
    const { open, rounds, skipped } = log.book();
    expect([open?.id, rounds.get('round 1')?.state, skipped]).toEqual(['round 2', 'ended', 1]);
  });
});

describe('a round', () => {
  it('pauses with its clock and goes on', () => {
    const log = onCourt();
    log.write('RoundPaused', { round: 'round 1', why: 'hidden', clockLeft: 31.5 });
    expect(log.book().open).toMatchObject({ state: 'paused', clockLeft: 31.5 });
    log.write('RoundResumed', { round: 'round 1' });
    expect(log.book().open).toMatchObject({ state: 'playing', clockLeft: 31.5 });
  });
  it('knows when play stood still', () => {
    const log = onCourt();
    expect(ofRound(log).breaks).toBeUndefined();
    const paused = log.write('RoundPaused', { round: 'round 1', why: 'asked', clockLeft: null });
    const resumed = log.write('RoundResumed', { round: 'round 1' });
    end(log);
    const reopened = log.write('RoundReopened', { round: 'round 1' });
    expect(ofRound(log).breaks).toEqual([paused.at, resumed.at, reopened.at]);
  });
  it('that is over neither pauses nor goes on, and keeps its first ending', () => {
    const log = onCourt();
    end(log);
    const before = log.book();
    log.write('RoundPaused', { round: 'round 1', why: 'asked', clockLeft: null });
    log.write('RoundResumed', { round: 'round 1' });
    log.write('RoundEnded', { round: 'round 1', why: 'time-up', clockLeft: 0 });
    expect(log.book()).toEqual({ ...before, skipped: 3 });
  });
  it('started over an open one leaves that one in the book as it stood', () => {
    const log = onCourt();
    tap(log, 'ox');
    log.write('RoundStarted', started({ round: 'round 2', first: 2 }));
    const { open, rounds, sessions } = log.book();
    expect([open?.id, open?.label, open?.first]).toEqual(['round 2', '2', 2]);
    expect(rounds.get('round 1')).toMatchObject({ state: 'playing', ending: null });
    expect(sessions.get('visit 1')?.rounds).toBe(2);
    // A late tap still finds it.
    log.write('ShotTaken', { round: 'round 1', stop: 1, made: true, side: null });
    expect(log.book().rounds.get('round 1')?.entries).toHaveLength(3);
    expect(log.book().open?.id).toBe('round 2');
  });
  it('is not started twice, and not outside a visit', () => {
    const log = onCourt();
    tap(log, 'o');
    const before = log.book();
    log.write('RoundStarted', started());
    log.write('RoundStarted', started({ round: 'round 2', session: 'no visit' }));
    expect(log.book()).toEqual({ ...before, skipped: 2 });
  });
  it('takes the ratings afterwards, and they may be changed', () => {
    const log = onCourt();
    end(log);
    log.write('AfterRated', { round: 'round 1', nerves: 7, effort: 4, note: 'windy' });
    log.write('AfterRated', { round: 'round 1', nerves: 6, effort: null, note: '' });
    expect(log.book().rounds.get('round 1')).toMatchObject({ nervesAfter: 6, effort: null, note: '' });
  });
  it('keeps the word that it was too much until another is given', () => {
    const log = onCourt();
    end(log);
    expect(log.book().rounds.get('round 1')).not.toHaveProperty('tooMuch');
    log.write('AfterRated', { round: 'round 1', nerves: 9, effort: 4, note: '', tooMuch: true });
    log.write('AfterRated', { round: 'round 1', nerves: 9, effort: 5, note: '' });
    expect(log.book().rounds.get('round 1')?.tooMuch).toBe(true);
    log.write('AfterRated', { round: 'round 1', nerves: 9, effort: 5, note: '', tooMuch: false });
    expect(log.book().rounds.get('round 1')?.tooMuch).toBe(false);
  });
  it('has its stake settled and opened again', () => {
    const log = onCourt();
    end(log);
    log.write('StakeSettled', { round: 'round 1' });
    expect(log.book().rounds.get('round 1')?.settled).toBe(true);
    log.write('StakeReopened', { round: 'round 1' });
    expect(log.book().rounds.get('round 1')?.settled).toBe(false);
  });
});

describe('a round from a file', () => {
  const imported = (log: Diary, change: object = {}) =>
    log.write('RoundImported', {
      round: 'paper 1',
      shooter: 'ines',
      date: '2026-10-01',
      session: 'evening',
      label: '1',
      condition: 'pressured',
      game: 'Threes',
      cells: [
        { spot: 'top', shot: 'catch', makes: 3, attempts: 5 },
        { spot: 'Short corner', shot: 'form', makes: 0, attempts: 2 },
      ],
      first: null,
      nerves: 6.5,
      note: 'from paper',
      ...change,
    });

  it('stands in the book as if it had been counted, and does not touch the court', () => {
    const log = onCourt();
    imported(log);
    const { open, rounds, sessions } = log.book();
    expect(open?.id).toBe('round 1');
    const round = rounds.get('paper 1');
    expect(round).toMatchObject({
      state: 'ended',
      ending: 'played-out',
      imported: true,
      nerves: 6.5,
      first: null,
    });
    expect(roundTally(round ?? { entries: [] })).toEqual({ makes: 3, attempts: 7 });
    expect(sessions.get(round?.session ?? '')).toMatchObject({
      label: 'evening',
      date: '2026-10-01',
      rounds: 1,
    });
  });
  it('shares its visit with the other rounds of that day and session, and with no other day', () => {
    const log = onCourt();
    imported(log);
    imported(log, { round: 'paper 2', label: '2' });
    imported(log, { round: 'paper 3', date: '2026-10-02' });
    const { rounds } = log.book();
    const [one, two, three] = ['paper 1', 'paper 2', 'paper 3'].map((id) => rounds.get(id)?.session);
    expect(one).toBe(two);
    expect(one).not.toBe(three);
  });
  it('told anew takes the place of the first telling', () => {
    const log = onCourt();
    const first = imported(log);
    imported(log, { cells: [{ spot: 'top', shot: 'catch', makes: 4, attempts: 5 }] });
    const { rounds, sessions } = log.book();
    const round = rounds.get('paper 1');
    expect(rounds.size).toBe(1);
    expect(roundTally(round ?? { entries: [] })).toEqual({ makes: 4, attempts: 5 });
    expect(round?.startedAt).toBe(first.at);
    expect(sessions.get(round?.session ?? '')?.rounds).toBe(1);
  });
  it('never takes the place of a round shot in the app', () => {
    const log = onCourt();
    tap(log, 'oo');
    end(log);
    const before = log.book();
    imported(log, { round: 'round 1' });
    expect(log.book()).toEqual({ ...before, skipped: 1 });
  });
  it('is corrected in its file, not on court', () => {
    const log = onCourt();
    end(log);
    const event = imported(log);
    const before = log.book();
    log.write('EntryRetracted', { round: 'paper 1', entry: event.id });
    log.write('RoundReopened', { round: 'paper 1' });
    expect(log.book()).toEqual({ ...before, skipped: 2 });
  });
});
