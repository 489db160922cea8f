import type { Seconds } from '../basics/units.ts';
import { endCountdown, startCountdown, type CountdownKind } from '../sound/countdown.ts';
import { endsAt, runClock, type GameClock } from '../sound/gameClock.ts';
import type { GymSound, Planned } from './ports.ts';

/** Wakes something up later; returns the way to call it off. */
export type Later = (seconds: Seconds, wake: () => void) => () => void;

/** What the court has planned on the audio clock: countdowns, buzzers, and the moment it wants to be woken. */
export interface CourtPlans {
  /** Calls off every sound and every waking. */
  hush(): void;
  /** Wakes once the audio clock is there, never before; one waking is planned at a time. */
  wakeAt(moment: Seconds, then: () => void): void;
  /** Counts five to one from now on. @returns when it is over */
  countIn(): Seconds;
  /** Runs a clock from a moment on, with its last seconds called and its buzzer planned whole. */
  run(clock: GameClock, from: Seconds): GameClock;
}

const COUNT_FROM = 5;
/** Time for the first word to be planned before it is due. */
const LEAD: Seconds = 0.3;

/** @param voice how a countdown sounds, asked anew for each */
export function courtPlans(sound: GymSound, later: Later, voice: () => CountdownKind): CourtPlans {
  let planned: Planned[] = [];
  let sleeping: (() => void) | null = null;
  return {
    hush: () => {
      for (const plan of planned) plan.cancel();
      planned = [];
      sleeping?.();
      sleeping = null;
    },
    wakeAt: (moment, then) => {
      sleeping?.();
      const wait = () => {
        const left = moment - sound.now();
        if (left <= 0) then();
        else sleeping = later(left, wait);
      };
      wait();
    },
    countIn: () => {
      const now = sound.now();
      const over = now + LEAD + COUNT_FROM;
      planned.push(sound.plan(startCountdown(over, COUNT_FROM, voice(), now)));
      return over;
    },
    run: (clock, from) => {
      const running = runClock(clock, from);
      const end = endsAt(running);
      planned.push(sound.plan(endCountdown(end, Math.min(COUNT_FROM, clock.full - 1), voice(), from)));
      return running;
    },
  };
}
