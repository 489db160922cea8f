import type { StoreApi } from 'zustand/vanilla';

import type { RoundId } from '../basics/ids.ts';
import type { Seconds } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import type { Ending, MissSide } from '../log/events.ts';
import type { GameClock } from '../sound/gameClock.ts';
import type { CourtGames } from './courtGames.ts';
import type { GymSound, SoundState } from './ports.ts';
import type { SoundCheck } from './soundCheck.ts';

/**
 * Where a round on court stands besides its log.
 * - `ready`: set up, waiting for the shooter to say go
 * - `countdown`: five to one
 * - `live`: shots count
 * - `buzzer`: the clock ran out; was a ball in the air?
 */
export type Phase = 'ready' | 'countdown' | 'live' | 'buzzer';

export interface CourtState {
  readonly round: RoundId | null;
  readonly phase: Phase;
  readonly clock: GameClock | null;
  /** When the countdown is over, on the audio clock. */
  readonly liveAt: Seconds | null;
  readonly sound: SoundState;
  /** Whether the shooter said they hear it; null before the question. */
  readonly heard: boolean | null;
}

/** The round being played: its countdown, its clock, its crowd, and the taps that go to the log. */
export interface Court extends Omit<SoundCheck, 'stop'>, Pick<CourtGames, 'outlook'> {
  readonly store: StoreApi<CourtState>;
  readonly sound: GymSound;
  unlock(): Promise<SoundState>;
  heard(heard: boolean): void;
  setVolume(volume: number): void;
  /** Looks at the open round; a round taken up again waits for the shooter to say go. */
  enter(): void;
  /** Leaves the court: what is live is paused, and the round can be gone on with later. */
  leave(why: 'asked' | 'hidden'): void;
  /** Starts the countdown, or at once a relaxed round. Call it from a touch or a key. */
  go(): Promise<void>;
  shot(made: boolean, side: MissSide | null): void;
  /** @param taken shots taken at the stop, where the clock cut it short */
  count(makes: number, taken?: number): void;
  /** After the buzzer: nothing was in the air. */
  nothingInTheAir(): void;
  undo(round: Round): Promise<boolean>;
  end(why: Ending): Promise<boolean>;
  /** One of a group has to go; the others play on. A duel ends for both. */
  sendOff(leaver: Round): Promise<boolean>;
}
