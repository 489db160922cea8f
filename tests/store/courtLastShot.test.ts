import { describe, expect, it } from 'vitest';

import { lastShotStart } from '../../renderer/games/clocks.ts';
import { verdictOf } from '../../renderer/games/played.ts';
import { gameSetup } from '../games/onCourt.ts';
import { beforeRound, buzzers, evening, live, over, phase, said, shown } from '../tools/evening.ts';

/* The last shot at the buzzer: every shot has a clock of its own, which starts somewhere else each time. */

const PLAN = { family: 'last shot', needed: 3, from: 2, to: 6 } as const;
const SEED = 21;
const ROUND = beforeRound(gameSetup(PLAN, { seed: SEED, clock: { kind: 'shot', seconds: 6 } }));
const start = (turn: number) => lastShotStart(PLAN, SEED, turn);

describe('a last shot', () => {
  it('has its clock set before the countdown, and its buzzer planned from there', async () => {
    const night = await evening(ROUND);
    expect(shown(night)).toBe(start(0));
    await night.begin();
    expect(phase(night)).toBe('live');
    expect(buzzers(night)[0]).toBeCloseTo(night.sound.now() + start(0), 9);
    await night.pass(1);
    expect(shown(night)).toBeCloseTo(start(0) - 1, 9);
  });
  it('is followed by the next one only when the shooter says go', async () => {
    const night = await live(ROUND);
    night.court.shot(true, null);
    expect(phase(night)).toBe('ready');
    expect(buzzers(night)).toEqual([]);
    expect(shown(night)).toBe(start(1));
    expect(start(1)).not.toBe(start(0));
    // What is tapped while the ball is fetched is no shot.
    night.court.shot(true, null);
    await night.pass(60);
    expect(night.round().entries).toHaveLength(1);
    await night.begin();
    expect(phase(night)).toBe('live');
    expect(said(night)).toEqual(['ShotTaken']);
  });
  it('counts where the ball was in the air at the buzzer', async () => {
    const night = await live(ROUND);
    await night.pass(7);
    expect(phase(night)).toBe('buzzer');
    night.court.shot(true, null);
    await night.pass(0);
    expect(phase(night)).toBe('ready');
    expect(night.round().entries).toMatchObject([{ kind: 'shot', made: true }]);
  });
  it('is lost, and no attempt, where nothing was in the air', async () => {
    const night = await live(ROUND);
    await night.pass(7);
    night.court.nothingInTheAir();
    await night.pass(0);
    expect(phase(night)).toBe('ready');
    expect(shown(night)).toBe(start(1));
    for (let turn = 1; turn < 5; turn += 1) {
      await night.begin();
      night.court.shot(true, null);
      await night.pass(0);
    }
    const round = over(night);
    expect(round?.entries.map(({ kind }) => kind)).toEqual(['expired', 'shot', 'shot', 'shot', 'shot']);
    expect(round && verdictOf(round)).toBe('beaten');
  });
  it('that is taken back begins with the same clock again, before the next one and in the middle of it', async () => {
    const night = await live(ROUND);
    night.court.shot(false, null);
    await night.court.undo(night.round());
    expect([phase(night), shown(night)]).toEqual(['ready', start(0)]);
    await night.begin();
    night.court.shot(false, null);
    await night.begin();
    await night.pass(0.5);
    await night.court.undo(night.round());
    expect([phase(night), shown(night)]).toEqual(['ready', start(0)]);
    expect(buzzers(night)).toEqual([]);
  });
  it('that is taken back during the next countdown calls that off', async () => {
    const night = await live(ROUND);
    night.court.shot(false, null);
    await night.court.go();
    expect(phase(night)).toBe('countdown');
    await night.court.undo(night.round());
    expect([phase(night), shown(night)]).toEqual(['ready', start(0)]);
    await night.pass(30);
    expect(phase(night)).toBe('ready');
  });
  it('has the same clock after a pause and after a crash', async () => {
    const night = await live(ROUND);
    await night.pass(1);
    night.court.leave('asked');
    expect(shown(night)).toBe(start(0));
    await night.begin();
    night.court.shot(true, null);
    await night.pass(0);
    const again = await evening(night.log.durable);
    expect([phase(again), shown(again)]).toEqual(['ready', start(1)]);
  });
});
