import { describe, expect, it } from 'vitest';

import type { Round } from '../../renderer/log/book.ts';
import { countFacts, expiredFacts, shotFacts, undoFacts } from '../../renderer/games/play.ts';
import { nextTurn, roundCells, stopAt } from '../../renderer/log/roundCells.ts';
import { onCourt, tap, type Diary } from '../log/diary.ts';

const open = (log: Diary): Round => {
  const round = log.book().open;
  if (!round) throw new Error('no round is open');
  return round;
};
const over = (log: Diary): Round => [...log.book().rounds.values()][0] ?? open(log);
const END = { type: 'RoundEnded', body: { round: 'round 1', why: 'played-out', clockLeft: null } };

describe('a tap', () => {
  it('is the next shot in card order; the last one ends the round', () => {
    const log = onCourt();
    const stops: number[] = [];
    for (let shot = 0; shot < 4; shot += 1) {
      const facts = shotFacts(open(log), shot % 2 === 0, 'long');
      expect(facts).toHaveLength(shot < 3 ? 1 : 2);
      const [first] = facts;
      if (first?.type === 'ShotTaken') stops.push(first.body.stop);
      log.tap(facts);
    }
    expect(stops).toEqual([0, 0, 1, 1]);
    expect(log.book().open).toBeNull();
    expect(over(log)).toMatchObject({ state: 'ended', ending: 'played-out' });
  });
  it('keeps the side of a miss, and none of a make', () => {
    const round = open(onCourt());
    expect(shotFacts(round, false, 'short')).toMatchObject([{ body: { made: false, side: 'short' } }]);
    expect(shotFacts(round, true, 'short')).toMatchObject([{ body: { made: true, side: null } }]);
  });
  it('after the end is nothing', () => {
    const log = onCourt();
    tap(log, 'oooo');
    log.write('RoundEnded', { round: 'round 1', why: 'played-out', clockLeft: null });
    const round = over(log);
    expect([...shotFacts(round, true, null), ...countFacts(round, 1), ...expiredFacts(round)]).toEqual([]);
  });
});

describe('a count', () => {
  it('is for all turns left at the stop, after single taps too', () => {
    const log = onCourt();
    tap(log, 'o');
    expect(countFacts(open(log), 1)).toEqual([
      { type: 'StopCounted', body: { round: 'round 1', stop: 0, makes: 1, attempts: 1 } },
    ]);
  });
  it('may be for fewer where the clock cut the stop short', () => {
    expect(countFacts(open(onCourt()), 0, 1)).toMatchObject([{ body: { makes: 0, attempts: 1 } }]);
  });
  it('of the last stop ends the round', () => {
    const log = onCourt();
    tap(log, 'oo');
    expect(countFacts(open(log), 0)).toEqual([
      { type: 'StopCounted', body: { round: 'round 1', stop: 1, makes: 0, attempts: 2 } },
      END,
    ]);
  });
  it.each([
    [3, undefined],
    [-1, undefined],
    [1.5, undefined],
    [Number.NaN, undefined],
    [2, 1],
    [0, 3],
    [0, 0],
  ])('of %d makes of %j is refused with a sentence', (makes, taken) => {
    expect(() => countFacts(open(onCourt()), makes, taken)).toThrow(
      new RangeError('Makes here run from 0 to 2.'),
    );
  });
});

describe('a turn the clock took', () => {
  it('uses the turn up', () => {
    const log = onCourt();
    log.tap(expiredFacts(open(log)));
    expect(nextTurn(open(log))).toEqual({ stop: 0, turn: 1 });
  });
});

describe('undo', () => {
  it('takes back the last entry, and that turn is the next again', () => {
    const log = onCourt();
    tap(log, 'oxo');
    expect(nextTurn(open(log))).toEqual({ stop: 1, turn: 1 });
    log.tap(undoFacts(open(log)));
    expect(nextTurn(open(log))).toEqual({ stop: 1, turn: 0 });
    log.tap(undoFacts(open(log)));
    expect(nextTurn(open(log))).toEqual({ stop: 0, turn: 1 });
  });
  it('of the last shot of all opens the round again first', () => {
    const log = onCourt();
    for (let shot = 0; shot < 4; shot += 1) log.tap(shotFacts(open(log), true, null));
    const facts = undoFacts(over(log));
    expect(facts.map(({ type }) => type)).toEqual(['RoundReopened', 'EntryRetracted']);
    log.tap(facts);
    expect(open(log)).toMatchObject({ state: 'paused', ending: null });
    expect(nextTurn(open(log))).toEqual({ stop: 1, turn: 1 });
    expect(log.book().skipped).toBe(0);
  });
  it('of a round the shooter ended themselves takes the ending back, and no shot', () => {
    const log = onCourt();
    tap(log, 'ox');
    log.tap([{ type: 'RoundEnded', body: { round: 'round 1', why: 'stopped', clockLeft: null } }]);
    log.tap(undoFacts(over(log)));
    expect(open(log)).toMatchObject({ state: 'paused', ending: null });
    expect(open(log).entries).toHaveLength(2);
    expect(log.book().skipped).toBe(0);
  });
  it('of a round the device broke off is nothing', () => {
    const log = onCourt();
    tap(log, 'ox');
    log.tap([{ type: 'RoundEnded', body: { round: 'round 1', why: 'interrupted', clockLeft: 3 } }]);
    expect(undoFacts(over(log))).toEqual([]);
  });
  it('of nothing is nothing', () => {
    expect(undoFacts(open(onCourt()))).toEqual([]);
  });
});

describe('the shots of a round', () => {
  it('add up by spot and kind of shot, in card order, stops without a shot left out', () => {
    const log = onCourt({
      card: {
        id: 'mixed',
        name: 'Mixed',
        stops: [
          { spot: 'top', shot: 'catch', attempts: 1 },
          { spot: 'left-wing', shot: 'catch', attempts: 1 },
          { spot: 'top', shot: 'catch', attempts: 1 },
          { spot: 'top', shot: 'dribble-left', attempts: 1 },
        ],
      },
    });
    log.tap(shotFacts(open(log), true, null));
    log.tap(expiredFacts(open(log)));
    log.tap(shotFacts(open(log), false, null));
    log.tap(shotFacts(open(log), true, null));
    expect(roundCells(over(log))).toEqual([
      { spot: 'top', shot: 'catch', makes: 1, attempts: 2 },
      { spot: 'top', shot: 'dribble-left', makes: 1, attempts: 1 },
    ]);
  });
  it('belong to a stop the card has, or the program is at fault', () => {
    expect(() => stopAt({ stops: [] }, 3)).toThrow('stop 3 of the card is missing');
  });
});
