import { createStore, type StoreApi } from 'zustand/vanilla';

import type { RoundId } from '../basics/ids.ts';
import type { Seconds } from '../basics/units.ts';
import type { Solved } from '../games/solver.ts';
import type { Round } from '../log/book.ts';
import type { MissSide } from '../log/events.ts';
import { countFacts, expiredFacts, shotFacts, undoFacts } from '../log/play.ts';
import { nextTurn } from '../log/roundCells.ts';
import { endCues, startCues } from '../sound/countdown.ts';
import {
  clockOf,
  endsAt,
  leftAt,
  pauseClock,
  resumeClock,
  restartClock,
  type GameClock,
} from '../sound/gameClock.ts';
import { solvedGame, standingOf } from './forecast.ts';
import type { Gym } from './gymStore.ts';
import type { GymSound, Planned, SoundState } from './ports.ts';

/**
 * Where a round on court stands besides its log.
 * - `ready`: set up, waiting for the shooter to say go
 * - `countdown`: five to one
 * - `live`: shots count
 * - `buzzer`: the clock ran out; was a ball in the air?
 * - `paused`: the clock stands still
 */
export type Phase = 'ready' | 'countdown' | 'live' | 'buzzer' | 'paused';

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
