import { describe, expect, it } from 'vitest';

import { beforeRound, evening, opening, over, phase, pressured, said, shown } from '../tools/evening.ts';
import { FULL } from '../tools/fakeGym.ts';

/* A round that is left, broken off, stopped, or cannot be saved. */

const PRESSURED = pressured();
const ROUND_CLOCK = pressured({ clock: { kind: 'round', seconds: 20 } });

describe('leaving', () => {
  it('while the sound is still being opened starts nothing later', async () => {
    const night = await evening(beforeRound(ROUND_CLOCK));
    const opened = opening(night);
    const going = night.court.go();
    night.court.leave('asked');
    await opened('running');
    await going;
    await night.pass(30);
    expect(phase(night)).toBe('ready');
    expect(night.sound.plans).toEqual([]);
    expect(said(night)).toEqual([]);
  });
  it('in the countdown calls it off, and the whole of it is counted again', async () => {
    const night = await evening(beforeRound(ROUND_CLOCK));
    await night.court.go();
    await night.pass(3);
    night.court.leave('hidden');
    expect(night.sound.plans.map(({ cancelledAt }) => cancelledAt)).toEqual([3, 3]);
    await night.pass(30);
    expect(phase(night)).toBe('ready');
    expect(night.log.said()).toMatchObject([{ type: 'RoundPaused', body: { why: 'hidden', clockLeft: 20 } }]);
    night.court.enter();
    await night.court.go();
    expect(night.sound.plans.at(-2)?.cues).toHaveLength(6);
    expect(said(night)).toEqual(['RoundPaused', 'RoundResumed']);
  });
  it('a round that waits logs nothing', async () => {
    const night = await evening(beforeRound(PRESSURED));
    night.court.leave('hidden');
    night.court.leave('asked');
    await night.pass(0);
    expect(said(night)).toEqual([]);
  });
});

describe('when the device takes the sound away', () => {
  it('in the countdown, nothing is lost and nothing logged: it is counted again', async () => {
    const night = await evening(beforeRound(ROUND_CLOCK));
    await night.court.go();
    await night.pass(4);
    night.sound.become('interrupted');
    expect(phase(night)).toBe('ready');
    expect(night.sound.plans.every(({ cancelledAt }) => cancelledAt === 4)).toBe(true);
    await night.pass(30);
    expect(phase(night)).toBe('ready');
    expect(said(night)).toEqual([]);
    expect(night.court.store.getState().clock).toEqual({ full: 20, left: 20, since: null });
    await night.begin();
    expect(phase(night)).toBe('live');
  });
  it('in a live round, it is paused with the clock as it stood', async () => {
    const night = await evening(beforeRound(ROUND_CLOCK));
    await night.begin();
    await night.pass(6.5);
    night.sound.become('interrupted');
    await night.pass(30);
    expect(phase(night)).toBe('ready');
    expect(shown(night)).toBeCloseTo(13.5, 9);
    expect(night.log.said()).toMatchObject([{ type: 'RoundPaused', body: { why: 'interrupted' } }]);
    expect(night.round()).toMatchObject({ state: 'paused', pausedBy: 'interrupted' });
    expect(night.round().clockLeft).toBeCloseTo(13.5, 9);
  });
  it('the round may end without a verdict, and that is not undone', async () => {
    const night = await evening(beforeRound(ROUND_CLOCK));
    await night.begin();
    night.court.shot(true, null);
    night.sound.become('interrupted');
    await night.court.end('interrupted');
    const round = over(night);
    expect(round?.ending).toBe('interrupted');
    const before = said(night);
    if (round) await night.court.undo(round);
    expect(said(night)).toEqual(before);
    expect(night.gym.store.getState().book.open).toBeNull();
  });
});

describe('stopping', () => {
  it('is logged once, however often it is tapped', async () => {
    const night = await evening(beforeRound(ROUND_CLOCK));
    await night.begin();
    await night.pass(5);
    night.court.leave('asked');
    expect(await Promise.all([night.court.end('stopped'), night.court.end('stopped')])).toEqual([true, true]);
    expect(said(night)).toEqual(['RoundPaused', 'RoundEnded']);
    expect(over(night)?.ending).toBe('stopped');
    expect(over(night)?.clockLeft).toBeCloseTo(15, 9);
  });
  it('while the sound is still being opened leaves no countdown behind', async () => {
    const night = await evening(beforeRound(PRESSURED));
    const opened = opening(night);
    const going = night.court.go();
    await night.court.end('stopped');
    await opened('running');
    await going;
    await night.pass(10);
    expect(night.sound.plans).toEqual([]);
    expect(phase(night)).toBe('ready');
  });
  it('that could not be saved leaves the round as it waited', async () => {
    const night = await evening(beforeRound(ROUND_CLOCK));
    await night.begin();
    await night.pass(5);
    night.court.leave('asked');
    night.log.mood = 'refuses';
    expect(await night.court.end('stopped')).toBe(false);
    expect(night.round().state).toBe('paused');
    expect(phase(night)).toBe('ready');
    night.log.mood = 'saves';
    await night.begin();
    expect(phase(night)).toBe('live');
  });
});

describe('the last shot', () => {
  it('that could not be saved leaves the round waiting, with its clock as it was at the shot', async () => {
    const night = await evening(
      beforeRound(pressured({ clock: { kind: 'round', seconds: 20 }, crowd: true })),
    );
    await night.begin();
    for (const made of [true, true, false]) night.court.shot(made, null);
    await night.pass(8);
    night.log.mood = 'holds';
    night.court.shot(true, null);
    await night.pass(2);
    await night.log.answer(FULL);
    expect(phase(night)).toBe('ready');
    expect(night.round().entries).toHaveLength(3);
    const { clock } = night.court.store.getState();
    expect(clock?.left).toBeCloseTo(12, 9);
    expect(clock?.since).toBeNull();
    // Nobody plays, so nobody watches.
    expect(night.sound.crowdCalls.at(-1)).toEqual({ does: 'leave' });
    night.log.mood = 'saves';
    await night.begin();
    night.court.shot(true, null);
    await night.pass(0);
    expect(said(night).slice(-2)).toEqual(['ShotTaken', 'RoundEnded']);
    expect(over(night)?.clockLeft).toBeCloseTo(12, 9);
  });
});
