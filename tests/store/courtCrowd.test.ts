import { describe, expect, it } from 'vitest';

import { beforeRound, evening, live, pressured, settled, type Evening } from '../tools/evening.ts';
import { FULL } from '../tools/fakeGym.ts';

/* The crowd around a round on court. How loud it gets is in crowdFor.test.ts. */

const WATCHED = beforeRound(pressured({ crowd: true }));
const heard = ({ sound }: Evening) =>
  sound.crowdCalls.map((call) => (call.does === 'answer' ? (call.made ? 'cheer' : 'groan') : call.does));

describe('the crowd of a round', () => {
  it('comes in with the countdown and swells once shots count', async () => {
    const night = await evening(WATCHED);
    expect(heard(night)).toEqual([]);
    await night.court.go();
    expect(heard(night)).toEqual(['enter']);
    await night.pass(6);
    expect(heard(night)).toEqual(['enter', 'swell']);
  });
  it('answers a shot once it is durable, and turns to the next', async () => {
    const night = await live(WATCHED);
    night.log.mood = 'holds';
    night.court.shot(true, null);
    await night.pass(1);
    expect(heard(night)).toEqual(['enter', 'swell']);
    await night.log.answer();
    night.log.mood = 'saves';
    night.court.shot(false, null);
    await night.pass(0);
    expect(heard(night)).toEqual(['enter', 'swell', 'cheer', 'swell', 'groan', 'swell']);
  });
  it('has no answer to a shot that could not be saved', async () => {
    const night = await live(WATCHED);
    night.log.mood = 'holds';
    night.court.shot(true, null);
    await night.log.answer(FULL);
    expect(heard(night)).toEqual(['enter', 'swell']);
  });
  it('answers the last shot and leaves', async () => {
    const night = await live(WATCHED);
    for (let shot = 0; shot < 4; shot += 1) night.court.shot(true, null);
    await night.pass(0);
    expect(heard(night).slice(-2)).toEqual(['cheer', 'leave']);
  });
  it('leaves at a pause and comes back with the next countdown', async () => {
    const night = await live(WATCHED);
    night.court.leave('asked');
    expect(heard(night).at(-1)).toBe('leave');
    await night.begin();
    expect(heard(night).slice(-2)).toEqual(['enter', 'swell']);
  });
  it('is not there where none was wished for', async () => {
    const night = await live(beforeRound(pressured({ crowd: false })));
    night.court.shot(true, null);
    await night.pass(0);
    expect(heard(night)).toEqual([]);
  });
  it('says nothing to a log that is read again', async () => {
    const night = await live(WATCHED);
    for (const made of [true, false, true]) night.court.shot(made, null);
    await night.pass(0);
    const after = await evening(night.log.durable);
    expect(after.round().entries).toHaveLength(3);
    await after.pass(10);
    await after.gym.open(true);
    expect(after.sound.crowdCalls).toEqual([]);
    expect(after.sound.plans).toEqual([]);
  });
});

describe('a taste of the crowd', () => {
  it('swells, cheers and is gone after eight seconds', async () => {
    const night = await evening(WATCHED);
    night.gym.set({ volume: 0.6 });
    await night.court.playCrowd();
    expect(heard(night)).toEqual(['enter', 'swell']);
    expect(night.sound.volumes).toEqual([0.6]);
    await night.pass(4);
    expect(heard(night).at(-1)).toBe('cheer');
    await night.pass(4);
    expect(heard(night)).toEqual(['enter', 'swell', 'cheer', 'leave']);
  });
  it('begins anew at a second tap, and ends once', async () => {
    const night = await evening(WATCHED);
    await night.court.playCrowd();
    await night.pass(2);
    await night.court.playCrowd();
    await night.pass(20);
    expect(heard(night)).toEqual(['enter', 'swell', 'leave', 'enter', 'swell', 'cheer', 'leave']);
  });
  it('is over when a round starts: it does not cheer into it, nor leave with its crowd', async () => {
    const night = await evening(WATCHED);
    await night.court.playCrowd();
    await night.court.go();
    await night.pass(20);
    expect(heard(night)).toEqual(['enter', 'swell', 'leave', 'enter', 'swell']);
  });
  it.each([
    ['a relaxed round', beforeRound()],
    ['a round without a crowd', beforeRound(pressured({ crowd: false }))],
  ])('does not stay for %s', async (_what, events) => {
    const night = await evening(events);
    await night.court.playCrowd();
    await night.court.go();
    await night.pass(20);
    await settled();
    expect(heard(night)).toEqual(['enter', 'swell', 'leave']);
  });
});
