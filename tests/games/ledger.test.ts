import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { debtsOf, doublesNext, type Debt } from '../../renderer/games/ledger.ts';
import type { Ending } from '../../renderer/log/events.ts';
import type { PressureSetup } from '../../renderer/pressure/ingredients.ts';
import { MOST_DOUBLES } from '../../renderer/pressure/stakes.ts';
import { diary, INES, PRESSURE, started, type Diary } from '../log/diary.ts';

/** A log in which Ines and Tobi are on court. */
function evening(): Diary {
  const log = diary();
  log.write('ShooterAdded', INES);
  log.write('ShooterAdded', { ...INES, shooter: 'tobi', name: 'Tobi' });
  log.write('SessionStarted', { session: 'visit 1', shooter: 'ines', date: '2026-11-25' });
  log.write('SessionStarted', { session: 'visit 2', shooter: 'tobi', date: '2026-11-25' });
  return log;
}

/** Four shots with a mark of three: `won`, `lost`, or given up after the first. */
type Played = 'won' | 'lost' | 'stopped' | 'interrupted';

function play(log: Diary, round: string, how: Played, change: Partial<PressureSetup> = {}): void {
  const pressure = { ...PRESSURE, ...change, ingredients: [] };
  log.write('RoundStarted', started({ round, condition: 'pressured', pressure }));
  const whole = how === 'won' || how === 'lost';
  for (const stop of whole ? [0, 0, 1, 1] : [0]) {
    log.write('ShotTaken', { round, stop, made: how === 'won', side: null });
  }
  log.write('RoundEnded', { round, why: whole ? 'played-out' : how, clockLeft: null });
}

const brief = ({ round, owes, times, settled }: Debt) => [round.id, owes, times, settled];
const ledger = (log: Diary) => debtsOf(log.book(), 'ines').map(brief);
const on = (round: string, times: 1 | 2 = 1): Partial<PressureSetup> => ({ doubles: { round, times } });

describe('double or nothing', () => {
  it.each<readonly [Played, Played, readonly unknown[]]>([
    ['lost', 'lost', ['b', 'shooter', 2, false]],
    ['lost', 'won', ['b', 'nobody', 2, true]],
    ['won', 'won', ['b', 'others', 2, false]],
    ['won', 'lost', ['b', 'nobody', 2, true]],
    // Given up or broken off, it leaves the debt as it was.
    ['lost', 'stopped', ['a', 'shooter', 1, false]],
    ['lost', 'interrupted', ['a', 'shooter', 1, false]],
    ['won', 'stopped', ['a', 'others', 1, false]],
  ])('%s, then %s', (first, second, debt) => {
    const log = evening();
    play(log, 'a', first);
    play(log, 'b', second, on('a'));
    expect(ledger(log)).toEqual([debt]);
  });

  it('goes twice, and then no further: a third round for it counts for nothing', () => {
    const log = evening();
    play(log, 'a', 'lost');
    play(log, 'b', 'lost', on('a'));
    play(log, 'c', 'lost', on('b', 2));
    expect(ledger(log)).toEqual([['c', 'shooter', 4, false]]);
    const [debt] = debtsOf(log.book(), 'ines');
    expect(debt && doublesNext(debt)).toBeNull();
    play(log, 'd', 'won', on('c', 2));
    expect(ledger(log)).toEqual([['c', 'shooter', 4, false]]);
  });

  it('is settled as a whole, and can be opened again', () => {
    const log = evening();
    play(log, 'a', 'lost');
    play(log, 'b', 'lost', on('a'));
    log.write('StakeSettled', { round: 'b' });
    expect(ledger(log)).toEqual([['b', 'shooter', 2, true]]);
    log.write('StakeReopened', { round: 'b' });
    expect(ledger(log)).toEqual([['b', 'shooter', 2, false]]);
  });

  it('counts for nothing on a debt that is settled, unknown, or has moved on', () => {
    const log = evening();
    play(log, 'a', 'lost');
    log.write('StakeSettled', { round: 'a' });
    play(log, 'b', 'lost', on('a'));
    play(log, 'c', 'lost', on('nobody’s'));
    expect(ledger(log)).toEqual([['a', 'shooter', 1, true]]);
    log.write('StakeReopened', { round: 'a' });
    play(log, 'd', 'lost', on('a'));
    // The debt stands at b since it was opened again: b came first.
    expect(ledger(log)).toEqual([['b', 'shooter', 2, false]]);
  });

  it('takes the stake of the debt, whatever the round says', () => {
    const log = evening();
    play(log, 'a', 'lost');
    play(log, 'b', 'lost', { ...on('a'), stake: 'A whole week of lunches' });
    expect(debtsOf(log.book(), 'ines')[0]?.stake).toBe('Loser buys lunch');
  });

  it('is taken back with the round that decided it', () => {
    const log = evening();
    play(log, 'a', 'lost');
    play(log, 'b', 'lost', on('a'));
    log.write('RoundReopened', { round: 'b' });
    expect(ledger(log)).toEqual([['a', 'shooter', 1, false]]);
    log.write('RoundEnded', { round: 'b', why: 'stopped', clockLeft: null });
    // Out of reach before it was stopped: stopping is no way out.
    expect(ledger(log)).toEqual([['b', 'shooter', 2, false]]);
  });
});

describe('laws of the ledger', () => {
  const how = fc.constantFrom<Played>('won', 'lost', 'stopped', 'interrupted');
  const link = fc.option(fc.nat({ max: 5 }));

  it('no debt grows beyond its limit, and each round stands in one debt at most', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(how, link), { minLength: 1, maxLength: 8 }), (rounds) => {
        const log = evening();
        for (const [at, [played, back]] of rounds.entries()) {
          play(log, `round ${at}`, played, back === null ? {} : on(`round ${back}`));
        }
        const debts = debtsOf(log.book(), 'ines');
        const chains = debts.reduce((sum, { doublings }) => sum + doublings + 1, 0);
        expect(chains).toBeLessThanOrEqual(rounds.length);
        for (const { doublings, times, owes, settled } of debts) {
          expect(doublings).toBeLessThanOrEqual(MOST_DOUBLES);
          expect(times).toBe(2 ** doublings);
          expect(settled).toBe(owes === 'nobody');
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('two on one court', () => {
  const plan = { family: 'duel', against: { kind: 'shooter' }, headStart: 0, extraPairs: 0 } as const;
  /** Ines first, Tobi second, four shots each, all at once. */
  function duel(ines: string, tobi: string, why: Ending = 'played-out'): Diary {
    const log = evening();
    const pressure = {
      ...PRESSURE,
      ingredients: [],
      mark: null,
      game: { name: 'A duel', plan, chance: 0.5 },
    };
    for (const [place, who] of ['ines', 'tobi'].entries()) {
      log.write(
        'RoundStarted',
        started({
          round: who,
          shooter: who,
          session: `visit ${place + 1}`,
          condition: 'pressured',
          pressure,
          group: { id: 'two', place: place + 1, turns: 'shot' },
        }),
      );
    }
    for (const at of ines.split('').keys()) {
      for (const [round, shots] of [
        ['ines', ines],
        ['tobi', tobi],
      ] as const) {
        log.write('ShotTaken', { round, stop: at < 2 ? 0 : 1, made: shots[at] === 'o', side: null });
      }
    }
    for (const round of ['ines', 'tobi']) log.write('RoundEnded', { round, why, clockLeft: null });
    return log;
  }
  const both = (log: Diary) =>
    ['ines', 'tobi'].map((who) => debtsOf(log.book(), who).map(({ owes }) => owes));

  it('the one who lost owes, and the other is owed to', () => {
    expect(both(duel('oooo', 'oxxx'))).toEqual([['others'], ['shooter']]);
    expect(both(duel('xxxx', 'ooox'))).toEqual([['shooter'], ['others']]);
  });
  it('of those who play for a mark, winners are owed to only where somebody fell short', () => {
    const together = (shots: Readonly<Record<'ines' | 'tobi', string>>): Diary => {
      const log = evening();
      for (const [place, who] of (['ines', 'tobi'] as const).entries()) {
        const pressure = { ...PRESSURE, ingredients: [] };
        const group = { id: 'two', place: place + 1, turns: 'game' } as const;
        const session = `visit ${place + 1}`;
        log.write(
          'RoundStarted',
          started({ round: who, shooter: who, session, condition: 'pressured', pressure, group }),
        );
      }
      for (const who of ['ines', 'tobi'] as const) {
        for (const [at, shot] of shots[who].split('').entries()) {
          log.write('ShotTaken', { round: who, stop: at < 2 ? 0 : 1, made: shot === 'o', side: null });
        }
        log.write('RoundEnded', { round: who, why: 'played-out', clockLeft: null });
      }
      return log;
    };
    expect(both(together({ ines: 'oooo', tobi: 'oooo' }))).toEqual([[], []]);
    expect(both(together({ ines: 'oooo', tobi: 'xxxx' }))).toEqual([['others'], ['shooter']]);
    expect(both(together({ ines: 'xxxx', tobi: 'xxxx' }))).toEqual([['shooter'], ['shooter']]);
  });
  it('ended level, or given up, leaves nobody owing', () => {
    expect(both(duel('ooxx', 'xxoo'))).toEqual([[], []]);
    expect(both(duel('o', 'x', 'stopped'))).toEqual([[], []]);
    expect(both(duel('oooo', 'xxxx', 'interrupted'))).toEqual([[], []]);
  });
});
