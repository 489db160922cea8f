import { describe, expect, it } from 'vitest';

import { othersIn } from '../../renderer/games/gameOn.ts';
import { verdictOf } from '../../renderer/games/played.ts';
import type { Round } from '../../renderer/log/book.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { groupOf } from '../games/onCourt.ts';
import { evening, phase, settled, shown, type Evening } from '../tools/evening.ts';

const LIVES: GamePlan = { family: 'lives', needed: 3, lives: 2 };
const SHOOTERS = ['ines', 'tobi', 'ada'];

/** A round of the group by its shooter. */
function roundOf(night: Evening, shooter: string): Round {
  const open = night.round();
  const found = [open, ...othersIn(night.gym.store.getState().ahead, open)].find(
    (round) => round.shooter === shooter,
  );
  if (!found) throw new Error(`no round of ${shooter}`);
  return found;
}

async function paused(night: Evening): Promise<void> {
  night.court.leave('asked');
  await settled();
}

describe('one of a group who has to go', () => {
  it('leaves the court to the next, who says go', async () => {
    const night = await evening(groupOf(LIVES, 'shot', SHOOTERS).events);
    await night.begin();
    night.court.shot(true, null);
    await paused(night);
    expect(await night.court.sendOff(roundOf(night, 'tobi'))).toBe(true);
    expect(night.round().shooter).toBe('ada');
    expect(night.court.store.getState()).toMatchObject({ phase: 'ready', round: 'round ada' });
    await night.begin();
    for (const made of [true, true, true, true]) night.court.shot(made, null);
    await settled();
    const { rounds, open, skipped } = night.gym.store.getState().book;
    expect([open?.shooter, skipped]).toEqual(['ada', 0]);
    expect(rounds.get('round tobi')).toMatchObject({ ending: 'stopped' });
    expect(rounds.get('round ines')).toMatchObject({ ending: 'played-out' });
  });

  it('may be waiting, and the one on court stays there with the clock as it was', async () => {
    const clock = { kind: 'shot', seconds: 8 } as const;
    const night = await evening(groupOf(LIVES, 'shot', SHOOTERS, { clock }).events);
    await night.begin();
    await night.pass(3);
    await paused(night);
    await night.court.sendOff(roundOf(night, 'ada'));
    expect(night.round().shooter).toBe('ines');
    expect(phase(night)).toBe('ready');
    expect(shown(night)).toBe(8);
  });

  it('has a clock of their own, and so has the next', async () => {
    const clock = { kind: 'round', seconds: 20 } as const;
    const night = await evening(groupOf(LIVES, 'game', SHOOTERS, { clock }).events);
    await night.begin();
    await night.pass(5);
    await paused(night);
    expect(shown(night)).toBeCloseTo(15, 6);
    await night.court.sendOff(roundOf(night, 'ines'));
    expect(night.round().shooter).toBe('tobi');
    expect(shown(night)).toBe(20);
  });

  it('comes back by an undo', async () => {
    const night = await evening(groupOf(LIVES, 'shot', SHOOTERS).events);
    await night.begin();
    night.court.shot(false, null);
    await paused(night);
    await night.court.sendOff(roundOf(night, 'tobi'));
    await night.court.undo(night.round());
    expect(night.round()).toMatchObject({ shooter: 'tobi', ending: null });
    await night.begin();
    expect(phase(night)).toBe('live');
    expect(night.round().state).toBe('playing');
  });

  it('ends a duel for both, without a winner', async () => {
    const duel: GamePlan = { family: 'duel', against: { kind: 'shooter' }, headStart: 0, extraPairs: 1 };
    const night = await evening(groupOf(duel, 'shot', ['ines', 'tobi']).events);
    await night.begin();
    night.court.shot(true, null);
    await paused(night);
    await night.court.sendOff(roundOf(night, 'ines'));
    const { book } = night.gym.store.getState();
    expect(book.open).toBeNull();
    expect([...book.rounds.values()].map((round) => verdictOf(round, othersIn(book, round)))).toEqual([
      'stopped',
      'stopped',
    ]);
  });
});

describe('an app that was killed in the middle of a game of several', () => {
  it('goes on with the right shooter at the right shot, and says go first', async () => {
    for (const turns of ['shot', 'stop', 'game'] as const) {
      for (let shots = 0; shots < 7; shots += 1) {
        const night = await evening(groupOf(LIVES, turns, SHOOTERS).events);
        for (let at = 0; at < shots; at += 1) {
          if (phase(night) === 'ready') await night.begin();
          night.court.shot(at % 3 !== 1, null);
          await settled();
        }
        const before = night.round();
        const after = await evening(night.log.durable);
        expect(after.round()).toEqual(before);
        expect(after.gym.store.getState().book.waiting).toEqual(night.gym.store.getState().book.waiting);
        expect(after.court.store.getState()).toMatchObject({ round: before.id, phase: 'ready' });
      }
    }
  });
});
