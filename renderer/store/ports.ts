import type { RoundId, ShooterId } from '../basics/ids.ts';
import type { Probability, Seconds } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import type { LogEvent, StoredEvent } from '../log/envelope.ts';
import type { ForecastScore } from '../stats/forecastScore.ts';
import type { Change } from '../stats/model/chokeIndex.ts';
import type { Study } from '../stats/study.ts';
import type { ChangeAsk, StudyAsk } from '../stats/studyAsk.ts';
import type { WhatHangs } from './whatHangs.ts';

/** The durable log, as the store sees it. A rejected promise carries a StorageError. */
export interface EventLog {
  /** Opens the log and reads it whole. `takeOver`: take it from a window that holds it. */
  open(takeOver: boolean): Promise<readonly StoredEvent[]>;
  /**
   * Resolves once all of the events are durable. Where it rejects for want of room none of them is; where the log broke
   * or was taken over in the middle, only the next `open` can tell.
   */
  append(events: readonly LogEvent[]): Promise<void>;
  /** The whole database as one SQLite file. */
  exportFile(): Promise<Uint8Array<ArrayBuffer>>;
  /** Calls back when another window took the log over, or the worker broke. */
  onLost(lost: (error: Error) => void): void;
}

/** One clip at one moment of the audio clock. What plays it has the same shape of its own: the store does not know it. */
export interface Cue {
  readonly clip: string;
  /** Seconds on the audio clock. */
  readonly at: Seconds;
  /** 0 to 1, on top of the volume the shooter set. */
  readonly gain: number;
}

/** Cues that were planned and can still be called off. */
export interface Planned {
  /** Silences every cue of the plan, sounding or still to come. */
  cancel(): void;
}

/** What the crowd does. `weight` says how much the shot matters, 0 to 1. */
export interface Crowd {
  /** Fades the murmur in. */
  enter(): void;
  /** Swells towards the next shot, due in about `seconds`. */
  swell(seconds: Seconds, weight: number): void;
  /** Cheers a make or groans at a miss. */
  answer(made: boolean, weight: number): void;
  /** Fades out and leaves. */
  leave(): void;
}

export type SoundState =
  /** Not asked for yet, or the browser wants a touch first. */
  | 'locked'
  /** The audio clock runs. */
  | 'running'
  /** The system took the sound away (a call, a device unplugged, sleep). */
  | 'interrupted'
  /** This device plays no sound; the clock runs on without it. */
  | 'silent';

/** The gym's loudspeaker, and the clock that games go by. */
export interface GymSound {
  readonly crowd: Crowd;
  state(): SoundState;
  /** Calls back at every change of state; returns the way to stop listening. */
  onState(changed: (state: SoundState) => void): () => void;
  /** Must be called from a touch or a key. Loads the clips and starts the audio clock. */
  unlock(): Promise<SoundState>;
  /** The audio clock, in seconds. Runs on the system's steady clock where there is no sound. */
  now(): Seconds;
  /** The audio clock as it reaches the ear: smooth, and never back. For drawing clocks. */
  shownNow(): Seconds;
  /** 0 to 1. */
  setVolume(volume: number): void;
  /** Plans whole countdowns ahead; nothing that happens on the page can make them late. */
  plan(cues: readonly Cue[]): Planned;
}

/** The device's display. */
export interface Display {
  /** Keeps the display from going dark while a round is on, where the device allows it. */
  keepAwake(on: boolean): void;
}

/** The drop model, fitted beside the page so that no tap ever waits for it. */
export interface Fitting {
  /** Brings its copy of one shooter's rounds up to date. */
  tell(shooter: ShooterId, changed: readonly Round[], gone: readonly RoundId[]): void;
  /**
   * Studies what it was told so far. Null where a later question overtook this one.
   *
   * @param progress called with the share that is done, 0 to 1
   * @throws Error where the worker broke
   */
  study(ask: StudyAsk, progress: (share: Probability) => void): Promise<Study | null>;
  /** How far the drop moved between two weeks. Null where its last study has no index, or is another one. */
  change(ask: ChangeAsk): Promise<Change | null>;
  /** How the forecasts for one shooter's latest rounds came out. Null where a later question overtook this one. */
  forecasts(shooter: ShooterId): Promise<ForecastScore | null>;
  /**
   * What the shooter loses when much hangs on the shot. Of a duel with another shooter it knows where it was told both
   * records. Null where a later question overtook this one.
   */
  hangs(shooter: ShooterId): Promise<WhatHangs | null>;
  /** Leaves what it is at. */
  rest(): void;
}
