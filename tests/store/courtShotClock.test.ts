import { describe, expect, it } from 'vitest';

import type { Seconds } from '../../renderer/basics/units.ts';
import {
  beforeRound,
  buzzers,
  live,
  over,
  phase,
  pressured,
  said,
  settled,
  shown,
  type Evening,
} from '../tools/evening.ts';

const SHOT = beforeRound(pressured({ clock: { kind: 'shot', seconds: 8 } }));

/** The page is busy, and hears of nothing that happens meanwhile. */
function stall({ sound }: Evening, seconds: Seconds): Promise<void> {
  sound.stall(seconds);
  return settled();
}

describe('the shot clock', () => {
  it('starts again, whole, at every tap, and with it its buzzer', async () => {
    const night = await live(SHOT);
    await night.pass(6);
    night.court.shot(true, null);
    expect(shown(night)).toBe(8);
    expect(buzzers(night)).toEqual([night.sound.now() + 8]);
    await night.pass(7.9);
    expect(phase(night)).toBe('live');
    await night.pass(0.2);
    expect(phase(night)).toBe('buzzer');
  });
  it('leaves no time of its own in the log', async () => {
    const night = await live(SHOT);
    night.court.shot(true, null);
    night.court.leave('asked');
    await night.pass(0);
    expect(night.log.said()).toMatchObject([
      { body: { stop: 0, made: true, side: null } },
      { type: 'RoundPaused', body: { clockLeft: null } },
    ]);
    expect(night.round().clockLeft).toBeNull();
  });
  it('takes the turn where nothing was in the air', async () => {
    const night = await live(SHOT);
    await night.pass(10);
    night.court.nothingInTheAir();
    await night.pass(0);
    expect(said(night)).toEqual(['TurnExpired']);
    expect(phase(night)).toBe('live');
    expect(shown(night)).toBe(8);
  });
  it('takes the last turn, and with it the round is played out', async () => {
    const night = await live(SHOT);
    for (let shot = 0; shot < 3; shot += 1) night.court.shot(true, null);
    await night.pass(10);
    night.court.nothingInTheAir();
    await night.pass(0);
    expect(said(night).slice(-2)).toEqual(['TurnExpired', 'RoundEnded']);
    expect(over(night)).toMatchObject({ ending: 'played-out' });
  });
  it.each([
    ['told at the question', (night: Evening) => night.pass(10)],
    ['tapped before the page heard of the buzzer', (night: Evening) => stall(night, 8.05)],
  ])('counts the ball in the air, %s, and the next shot has its own time', async (_what, wait) => {
    const night = await live(SHOT);
    await wait(night);
    night.court.shot(true, null);
    await night.pass(0);
    expect(said(night)).toEqual(['ShotTaken']);
    expect(phase(night)).toBe('live');
    expect(shown(night)).toBe(8);
  });
  it('starts again at an undo, but not where there is nothing to undo', async () => {
    const night = await live(SHOT);
    await night.pass(3);
    await night.court.undo(night.round());
    expect(shown(night)).toBeCloseTo(5, 9);
    night.court.shot(true, null);
    await night.pass(3);
    await night.court.undo(night.round());
    expect(shown(night)).toBe(8);
    expect(night.round().entries).toEqual([]);
  });
  it('waits, at its buzzer, for the shot that was undone and then for the ball in the air', async () => {
    const night = await live(SHOT);
    night.court.shot(true, null);
    await night.pass(10);
    await night.court.undo(night.round());
    expect(phase(night)).toBe('buzzer');
    night.court.shot(false, null);
    await night.pass(0);
    expect(phase(night)).toBe('buzzer');
    night.court.nothingInTheAir();
    await night.pass(0);
    expect(phase(night)).toBe('live');
    expect(night.round().entries).toMatchObject([{ kind: 'shot', made: false }, { kind: 'expired' }]);
  });
  it('is full again after a pause', async () => {
    const night = await live(SHOT);
    await night.pass(6);
    night.court.leave('hidden');
    expect(phase(night)).toBe('ready');
    expect(shown(night)).toBe(8);
    expect(night.court.store.getState().clock?.since).toBeNull();
    night.court.enter();
    await night.begin();
    await night.pass(7.9);
    expect(phase(night)).toBe('live');
  });
  it('asks its question through a pause, and then waits for the shooter to say go', async () => {
    const night = await live(SHOT);
    await night.pass(10);
    night.court.leave('asked');
    expect(phase(night)).toBe('buzzer');
    night.court.enter();
    night.court.shot(true, null);
    await night.pass(20);
    expect(phase(night)).toBe('ready');
    expect(shown(night)).toBe(8);
    await night.begin();
    expect(said(night)).toEqual(['RoundPaused', 'ShotTaken', 'RoundResumed']);
  });
});
