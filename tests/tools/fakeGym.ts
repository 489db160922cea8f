import type { Seconds } from '../../renderer/basics/units.ts';
import type { LogEvent } from '../../renderer/log/envelope.ts';
import type { Later } from '../../renderer/store/court.ts';
import type { Cue, EventLog, GymSound, SoundState } from '../../renderer/store/ports.ts';
import { fakeLog, type FakeLog } from '../store/fakeWorld.ts';

/* A gym without a loudspeaker: its clock is moved by hand, and it keeps what was asked of it. */

/** Cues as they were planned. */
export interface PlannedCues {
  readonly cues: readonly Cue[];
  /** When they were called off; null while they stand. */
  cancelledAt: Seconds | null;
}

export type CrowdCall =
  | { readonly does: 'enter' | 'leave' }
  | { readonly does: 'swell'; readonly seconds: Seconds; readonly weight: number }
  | { readonly does: 'answer'; readonly made: boolean; readonly weight: number };

export interface FakeSound extends GymSound {
  readonly plans: readonly PlannedCues[];
  readonly crowdCalls: CrowdCall[];
  readonly volumes: readonly number[];
  /** Wakes when the clock gets there. */
  readonly later: Later;
  /** Moves the clock, and wakes whoever is due, each at their moment. */
  pass(seconds: Seconds): void;
  /** Moves the clock while the page is busy: nobody wakes before the next `pass`. */
  stall(seconds: Seconds): void;
  /** Wakes everybody before their time, as a timer may while the audio clock stands. */
  wakeEarly(): void;
  become(state: SoundState): void;
  /** What the next `unlock` answers; a promise leaves it under way. */
  unlocks: () => Promise<SoundState>;
}

export function fakeSound(): FakeSound {
  const plans: PlannedCues[] = [];
  const crowdCalls: CrowdCall[] = [];
  const volumes: number[] = [];
  const listeners = new Set<(state: SoundState) => void>();
  let sleepers: { readonly at: Seconds; readonly wake: () => void }[] = [];
  let state: SoundState = 'locked';
  let now: Seconds = 0;
  const sound: FakeSound = {
    plans,
    crowdCalls,
    volumes,
    crowd: {
      enter: () => void crowdCalls.push({ does: 'enter' }),
      swell: (seconds, weight) => void crowdCalls.push({ does: 'swell', seconds, weight }),
      answer: (made, weight) => void crowdCalls.push({ does: 'answer', made, weight }),
      leave: () => void crowdCalls.push({ does: 'leave' }),
    },
    state: () => state,
    onState: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    become: (next) => {
      state = next;
      for (const changed of listeners) changed(next);
    },
    unlocks: () => Promise.resolve('running'),
    unlock: async () => {
      const next = await sound.unlocks();
      if (next !== state) sound.become(next);
      return next;
    },
    now: () => now,
    shownNow: () => now,
    setVolume: (volume) => void volumes.push(volume),
    plan: (cues) => {
      const plan: PlannedCues = { cues, cancelledAt: null };
      plans.push(plan);
      return { cancel: () => void (plan.cancelledAt ??= now) };
    },
    later: (seconds, wake) => {
      const sleeper = { at: now + seconds, wake };
      sleepers.push(sleeper);
      return () => {
        sleepers = sleepers.filter((other) => other !== sleeper);
      };
    },
    wakeEarly: () => {
      const early = sleepers;
      sleepers = [];
      for (const { wake } of early) wake();
    },
    stall: (seconds) => {
      now += seconds;
    },
    pass: (seconds) => {
      const until = now + seconds;
      for (;;) {
        const [next] = sleepers.toSorted((one, other) => one.at - other.at);
        if (!next || next.at > until) break;
        sleepers = sleepers.filter((other) => other !== next);
        now = Math.max(now, next.at);
        next.wake();
      }
      now = until;
    },
  };
  return sound;
}

/** A log that answers at once, unless it is told to keep silent or to refuse. */
export interface GymLog extends FakeLog {
  /** What it does with the next batches. */
  mood: 'saves' | 'holds' | 'refuses';
  /** What was made durable since the gym was opened. */
  said(): readonly LogEvent[];
}

export const FULL = new Error('no room');

/** @param earlier what it holds already */
export function gymLog(earlier: readonly LogEvent[]): GymLog {
  const log = fakeLog();
  log.durable.push(...earlier);
  const append: EventLog['append'] = (events) => {
    const answered = log.append(events);
    if (moody.mood !== 'holds') void log.answer(moody.mood === 'refuses' ? FULL : undefined);
    return answered;
  };
  const moody: GymLog = {
    ...log,
    append,
    mood: 'saves',
    said: () => log.durable.slice(earlier.length),
  };
  return moody;
}
