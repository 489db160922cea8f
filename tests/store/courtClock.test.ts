import { describe, expect, it } from 'vitest';

import type { LogEvent } from '../../renderer/log/envelope.ts';
import {
  beforeRound,
  buzzers,
  evening,
  live,
  over,
  phase,
  pressured,
  said,
  shown,
  type Evening,
} from '../tools/evening.ts';
import { FULL } from '../tools/fakeGym.ts';

/* The clock of a whole round on court. The clock of each shot is in courtShotClock.test.ts. */

const ROUND = beforeRound(pressured({ clock: { kind: 'round', seconds: 20 } }));
const COUNTS = beforeRound({ ...pressured({ clock: { kind: 'round', seconds: 20 } }), entry: 'counts' });

/** A round in its buzzer, after so many shots. */
async function atBuzzer(events: readonly LogEvent[], shots: number): Promise<Evening> {
  const night = await live(events);
  for (let shot = 0; shot < shots; shot += 1) night.court.shot(true, null);
  await night.pass(25);
  expect(phase(night)).toBe('buzzer');
  return night;
}
const lastTwo = ({ log }: Evening) => log.said().slice(-2);
const standing = ({ court }: Evening) => court.store.getState().clock?.since === null;
/** The page closes on the spot, and the app is opened on the same log. */
const again = ({ log }: Evening) => evening(log.durable);

describe('the round clock', () => {
  it('has its last seconds and its buzzer planned whole before the first shot', async () => {
    const night = await evening(ROUND);
    await night.court.go();
    const cues = night.sound.plans.flatMap((plan) => plan.cues).slice(6);
    expect(cues.map(({ clip }) => clip)).toEqual([
      'count-5',
      'count-4',
      'count-3',
      'count-2',
      'count-1',
      'buzzer',
    ]);
    for (const [n, { at }] of cues.entries()) expect(at).toBeCloseTo(20.3 + n, 9);
    expect(shown(night)).toBe(20);
    await night.pass(5.3);
    expect(shown(night)).toBeCloseTo(20, 9);
    await night.pass(4);
    expect(shown(night)).toBeCloseTo(16, 9);
  });
  it('calls no number together with "go" where it is as short as that', async () => {
    const night = await evening(beforeRound(pressured({ clock: { kind: 'round', seconds: 3 } })));
    await night.court.go();
    expect(night.sound.plans[1]?.cues.map(({ clip }) => clip)).toEqual(['count-2', 'count-1', 'buzzer']);
  });
  it('is written down with every tap', async () => {
    const night = await live(ROUND);
    await night.pass(4);
    night.court.shot(true, null);
    await night.pass(3.5);
    night.court.shot(false, 'left');
    await night.pass(0);
    const left = night.log
      .said()
      .map((event) => (event.type === 'ShotTaken' ? event.body.clockLeft : undefined));
    expect(left[0]).toBeCloseTo(16, 9);
    expect(left[1]).toBeCloseTo(12.5, 9);
    const counted = await live(COUNTS);
    await counted.pass(11);
    counted.court.count(2);
    expect(counted.round().clockLeft).toBeCloseTo(9, 9);
  });
  it('is taken up with that time after a crash', async () => {
    const night = await live(ROUND);
    await night.pass(4);
    night.court.shot(true, null);
    await night.pass(9);
    const after = await again(night);
    expect(phase(after)).toBe('ready');
    expect(shown(after)).toBeCloseTo(16, 9);
    expect(standing(after)).toBe(true);
    await after.begin();
    const [buzzer] = buzzers(after);
    expect(buzzer).toBeCloseTo(after.sound.now() + 16, 9);
  });
  it('begins whole after a crash before the first shot', async () => {
    const night = await live(ROUND);
    await night.pass(4);
    expect(shown(await again(night))).toBe(20);
  });
  it('is gone with the last shot, and its buzzer does not sound while that is being saved', async () => {
    const night = await live(ROUND);
    for (let shot = 0; shot < 3; shot += 1) night.court.shot(true, null);
    night.log.mood = 'holds';
    night.court.shot(true, null);
    expect(buzzers(night)).toEqual([]);
    expect(shown(night)).toBeNull();
    await night.pass(30);
    expect(phase(night)).not.toBe('buzzer');
    await night.log.answer();
    expect(over(night)).toMatchObject({ ending: 'played-out' });
  });
  it('stands in a pause, and goes on with the rest', async () => {
    const night = await live(ROUND);
    await night.pass(8);
    night.court.leave('asked');
    expect(buzzers(night)).toEqual([]);
    await night.pass(60);
    expect(phase(night)).toBe('ready');
    expect(shown(night)).toBeCloseTo(12, 9);
    expect(night.round().clockLeft).toBeCloseTo(12, 9);
    night.court.enter();
    await night.begin();
    await night.pass(11.9);
    expect(phase(night)).toBe('live');
    await night.pass(0.2);
    expect(phase(night)).toBe('buzzer');
  });
});

describe('at the buzzer of the round', () => {
  it('a tap in time is a shot like any other', async () => {
    const night = await live(ROUND);
    await night.pass(19.9);
    night.court.shot(true, null);
    await night.pass(0);
    expect(said(night)).toEqual(['ShotTaken']);
    expect(phase(night)).toBe('live');
    await night.pass(0.2);
    expect(phase(night)).toBe('buzzer');
    expect(buzzers(night)).toHaveLength(1);
  });
  it('the ball in the air is the last one', async () => {
    const night = await atBuzzer(ROUND, 1);
    night.court.shot(true, null);
    await night.pass(0);
    expect(lastTwo(night)).toMatchObject([
      { type: 'ShotTaken', body: { made: true, clockLeft: 0 } },
      { type: 'RoundEnded', body: { why: 'time-up', clockLeft: 0 } },
    ]);
    expect(over(night)?.entries).toHaveLength(2);
  });
  it('a tap that comes before the page heard of it is the ball in the air as well', async () => {
    const night = await live(ROUND);
    night.court.shot(true, null);
    night.sound.stall(20.05);
    expect(phase(night)).toBe('live');
    night.court.shot(false, 'short');
    await night.pass(0);
    expect(lastTwo(night)).toMatchObject([
      { type: 'ShotTaken', body: { made: false, side: 'short', clockLeft: 0 } },
      { type: 'RoundEnded', body: { why: 'time-up' } },
    ]);
    await night.pass(30);
    expect(phase(night)).toBe('ready');
  });
  it('the ball in the air that was the last of the card ends it as played out', async () => {
    const night = await atBuzzer(ROUND, 3);
    night.court.shot(true, null);
    await night.pass(0);
    expect(over(night)).toMatchObject({ ending: 'played-out', clockLeft: 0 });
  });
  it('"No, nothing" ends it as time-up', async () => {
    const night = await atBuzzer(ROUND, 2);
    night.court.nothingInTheAir();
    night.court.nothingInTheAir();
    await night.pass(0);
    expect(said(night)).toEqual(['ShotTaken', 'ShotTaken', 'RoundEnded']);
    expect(over(night)).toMatchObject({ ending: 'time-up', clockLeft: 0 });
    expect(phase(night)).toBe('ready');
  });
  it('"No, nothing" is no answer before it', async () => {
    const night = await live(ROUND);
    night.court.nothingInTheAir();
    await night.pass(0);
    expect(said(night)).toEqual([]);
  });
  it('an undone shot is entered again before the ball in the air', async () => {
    const night = await atBuzzer(ROUND, 2);
    await night.court.undo(night.round());
    night.court.shot(false, null);
    await night.pass(0);
    expect(phase(night)).toBe('buzzer');
    night.court.shot(true, null);
    await night.pass(0);
    expect(over(night)).toMatchObject({ ending: 'time-up' });
    expect(over(night)?.entries).toMatchObject([{ made: true }, { made: false }, { made: true }]);
  });
  it('so are two, and one undone before the page heard of the buzzer', async () => {
    const night = await live(ROUND);
    for (let shot = 0; shot < 3; shot += 1) night.court.shot(true, null);
    night.sound.stall(20.05);
    await night.court.undo(night.round());
    await night.pass(1);
    await night.court.undo(night.round());
    for (const made of [false, false]) night.court.shot(made, null);
    expect(phase(night)).toBe('buzzer');
    night.court.shot(true, null);
    await night.pass(0);
    expect(over(night)).toMatchObject({ ending: 'played-out' });
  });
  it('so is one undone after the app was closed at the question', async () => {
    const night = await atBuzzer(ROUND, 2);
    night.court.leave('asked');
    await night.pass(0);
    const after = await again(night);
    await after.court.undo(after.round());
    after.court.shot(false, null);
    await after.pass(0);
    expect(phase(after)).toBe('buzzer');
    after.court.shot(true, null);
    await after.pass(0);
    expect(over(after)?.entries).toMatchObject([{ made: true }, { made: false }, { made: true }]);
  });
  it('an undo that could not be saved owes nothing', async () => {
    const night = await atBuzzer(ROUND, 2);
    night.log.mood = 'refuses';
    expect(await night.court.undo(night.round())).toBe(false);
    night.log.mood = 'saves';
    night.court.shot(true, null);
    await night.pass(0);
    expect(over(night)?.entries).toHaveLength(3);
    expect(over(night)).toMatchObject({ ending: 'time-up' });
  });
  it('a shot of before that could not be saved is entered again too', async () => {
    const night = await live(ROUND);
    night.court.shot(true, null);
    night.log.mood = 'holds';
    night.court.shot(true, null);
    await night.pass(25);
    await night.log.answer(FULL);
    night.log.mood = 'saves';
    night.court.shot(false, null);
    await night.pass(0);
    expect(phase(night)).toBe('buzzer');
    night.court.nothingInTheAir();
    await night.pass(0);
    expect(over(night)?.entries).toMatchObject([{ made: true }, { made: false }]);
  });
  it('a count may be for the shots got off, and is the last', async () => {
    const night = await live(COUNTS);
    night.court.count(1);
    await night.pass(25);
    night.court.count(1, 1);
    await night.pass(0);
    expect(over(night)).toMatchObject({
      ending: 'time-up',
      entries: [
        { makes: 1, attempts: 2 },
        { makes: 1, attempts: 1 },
      ],
    });
  });
  it('the question stays through a pause: time that ran out is not given back', async () => {
    const night = await atBuzzer(ROUND, 1);
    night.court.leave('asked');
    await night.pass(60);
    expect(phase(night)).toBe('buzzer');
    expect(night.round()).toMatchObject({ state: 'paused', clockLeft: 0 });
    night.court.enter();
    await night.court.go();
    expect(phase(night)).toBe('buzzer');
    const after = await again(night);
    expect(phase(after)).toBe('buzzer');
    after.court.shot(true, null);
    await after.pass(0);
    expect(over(after)).toMatchObject({ ending: 'time-up' });
    expect(over(after)?.entries).toHaveLength(2);
  });
  it('a pause before the page heard of it comes to the question as well', async () => {
    const night = await live(ROUND);
    night.sound.stall(20.05);
    night.court.leave('hidden');
    await night.pass(0);
    expect(phase(night)).toBe('buzzer');
    expect(night.log.said()).toMatchObject([{ type: 'RoundPaused', body: { clockLeft: 0 } }]);
  });
  it.each([
    ['the ball in the air', (night: Evening) => night.court.shot(true, null)],
    ['"No, nothing"', (night: Evening) => night.court.nothingInTheAir()],
  ])('%s that could not be saved is asked for again', async (_what, answer) => {
    const night = await atBuzzer(ROUND, 1);
    night.log.mood = 'refuses';
    answer(night);
    await night.pass(0);
    expect(phase(night)).toBe('buzzer');
    expect(shown(night)).toBe(0);
    expect(night.gym.store.getState().trouble).toBe(FULL);
    night.log.mood = 'saves';
    answer(night);
    await night.pass(0);
    expect(over(night)).toMatchObject({ ending: 'time-up' });
  });
});

describe('undo after the verdict', () => {
  it('opens the round again without its last shot, with the clock of that moment', async () => {
    const night = await live(ROUND);
    await night.pass(7);
    for (let shot = 0; shot < 4; shot += 1) night.court.shot(true, null);
    await night.pass(90);
    const round = over(night);
    expect(round && (await night.court.undo(round))).toBe(true);
    night.court.enter();
    expect(night.round()).toMatchObject({ state: 'paused', ending: null });
    expect(night.round().entries).toHaveLength(3);
    expect(phase(night)).toBe('ready');
    expect(shown(night)).toBeCloseTo(13, 9);
    await night.begin();
    night.court.shot(false, null);
    await night.pass(0);
    expect(over(night)).toMatchObject({ ending: 'played-out' });
  });
  it('of the ball in the air asks for it anew', async () => {
    const night = await atBuzzer(ROUND, 1);
    night.court.shot(true, null);
    await night.pass(0);
    const round = over(night);
    if (round) await night.court.undo(round);
    night.court.enter();
    expect(phase(night)).toBe('buzzer');
    night.court.shot(false, null);
    await night.pass(0);
    expect(over(night)?.entries).toMatchObject([{ made: true }, { made: false }]);
  });
  it('of a mere ending keeps every shot', async () => {
    const night = await live(ROUND);
    night.court.shot(true, null);
    await night.pass(5);
    night.court.leave('asked');
    await night.court.end('stopped');
    const round = over(night);
    if (round) await night.court.undo(round);
    night.court.enter();
    expect(night.round().entries).toHaveLength(1);
    expect(phase(night)).toBe('ready');
    expect(shown(night)).toBeCloseTo(15, 9);
  });
  it('of "No, nothing" comes back to the question, every shot kept', async () => {
    const night = await atBuzzer(ROUND, 2);
    night.court.nothingInTheAir();
    await night.pass(0);
    const round = over(night);
    if (round) await night.court.undo(round);
    night.court.enter();
    expect(phase(night)).toBe('buzzer');
    expect(night.round().entries).toHaveLength(2);
  });
});
