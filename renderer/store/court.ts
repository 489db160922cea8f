import { createStore, type StoreApi } from 'zustand/vanilla';

import type { RoundId } from '../basics/ids.ts';
import type { Seconds } from '../basics/units.ts';
import type { Solved } from '../games/solver.ts';
import type { Round } from '../log/book.ts';
import type { Ending, MissSide } from '../log/events.ts';
import type { Fact } from '../log/facts.ts';
import { countFacts, expiredFacts, shotFacts, undoFacts } from '../log/play.ts';
import { endCountdown, startCountdown } from '../sound/countdown.ts';
import { endsAt, leftAt, pauseClock, readyClock, runClock, type GameClock } from '../sound/gameClock.ts';
import { crowdFor } from './crowdFor.ts';
import { solvedGame } from './forecast.ts';
import type { Gym } from './gymStore.ts';
import type { GymSound, Planned, SoundState } from './ports.ts';

/** What a screen needs to draw the clock. */
export { leftAt, writeClock, type GameClock } from '../sound/gameClock.ts';

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

/** Wakes something up later; returns the way to call it off. */
export type Later = (seconds: Seconds, wake: () => void) => () => void;

/** The round being played: its countdown, its clock, its crowd, and the taps that go to the log. */
export interface Court {
  readonly store: StoreApi<CourtState>;
  readonly sound: GymSound;
  unlock(): Promise<SoundState>;
  playCheck(): void;
  /** A few seconds of crowd: murmur, swell, a cheer, and gone. */
  playCrowd(): Promise<void>;
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
  /** The round's game, solved once; null without a mark. */
  game(round: Round): Solved | null;
}

/** An entry remembers the round clock, so that a round broken off by a crash goes on with the right time. */
function withClock(fact: Fact, clockLeft: Seconds | null): Fact {
  if (clockLeft === null) return fact;
  if (fact.type === 'ShotTaken') return { ...fact, body: { ...fact.body, clockLeft } };
  if (fact.type === 'StopCounted') return { ...fact, body: { ...fact.body, clockLeft } };
  return fact;
}

const COUNT_FROM = 5;
/** Time for the first word to be planned before it is due. */
const LEAD: Seconds = 0.3;
/** The crowd knows roughly when the next shot comes. */
const USUAL_GAP: Seconds = 6;

export function createCourt(gym: Gym, sound: GymSound, later: Later): Court {
  const store = createStore<CourtState>(() => ({
    round: null,
    phase: 'ready',
    clock: null,
    liveAt: null,
    sound: sound.state(),
    heard: null,
  }));
  let planned: Planned[] = [];
  let sleeping: (() => void) | null = null;
  let solved: { round: RoundId; game: Solved | null } | null = null;

  const open = (): Round | null => gym.store.getState().ahead.open;
  const voice = () => gym.store.getState().settings.countdown;

  function hush(): void {
    for (const plan of planned) plan.cancel();
    planned = [];
    sleeping?.();
    sleeping = null;
  }

  function wakeAt(moment: Seconds, then: () => void): void {
    sleeping?.();
    const wait = () => {
      const left = moment - sound.now();
      if (left <= 0) then();
      else sleeping = later(left, wait);
    };
    wait();
  }

  function game(round: Round): Solved | null {
    if (solved?.round !== round.id)
      solved = { round: round.id, game: solvedGame(gym.store.getState().book, round) };
    return solved.game;
  }

  /** Runs the clock from a moment on, with its last seconds called and its buzzer planned whole. */
  function run(clock: GameClock, from: Seconds): GameClock {
    const running = runClock(clock, from);
    const end = endsAt(running);
    planned.push(sound.plan(endCountdown(end, Math.min(COUNT_FROM, clock.full - 1), voice(), from)));
    return running;
  }

  function goLive(): void {
    const { clock } = store.getState();
    store.setState({ phase: 'live' });
    if (clock) wakeAt(endsAt(clock), () => store.setState({ phase: 'buzzer' }));
    const round = open();
    if (round) crowd.expect(round);
  }

  /** The next shot's own clock, from now. */
  function restartShotClock(round: Round): void {
    const setting = round.pressure?.clock;
    if (setting?.kind !== 'shot' || round.state === 'ended') return;
    hush();
    const clock = run(readyClock(setting.seconds, setting.seconds), sound.now());
    store.setState({ clock, phase: 'live' });
    wakeAt(endsAt(clock), () => store.setState({ phase: 'buzzer' }));
  }

  function rest(phase: Phase): void {
    hush();
    crowd.leave();
    store.setState({ phase, liveAt: null });
  }

  /** What the round clock shows now; null where the round has none. */
  function clockLeft(round: Round): Seconds | null {
    const { clock } = store.getState();
    return clock && round.pressure?.clock?.kind === 'round' ? leftAt(clock, sound.now()) : null;
  }

  function ending(round: Round, why: Ending): Fact {
    return { type: 'RoundEnded', body: { round: round.id, why, clockLeft: clockLeft(round) } };
  }

  /** Sends a tap to the log. The clock does not wait for it. */
  function tap(facts: readonly Fact[]): void {
    if (facts.length === 0) return;
    const { phase } = store.getState();
    const round = open();
    if (!round || (phase !== 'live' && phase !== 'buzzer')) return;
    // A ball that was in the air at the round clock's buzzer is the last one.
    const last = phase === 'buzzer' && round.pressure?.clock?.kind === 'round';
    const left = clockLeft(round);
    const entries = facts.filter((fact) => fact.type !== 'RoundEnded').map((fact) => withClock(fact, left));
    const ended = entries.length < facts.length;
    void gym.dispatch(
      last || ended ? [...entries, ending(round, ended ? 'played-out' : 'time-up')] : entries,
    );
    if (last || ended) {
      hush();
      store.setState({ clock: null });
    } else restartShotClock(round);
  }

  const crowd = crowdFor(sound.crowd, game, USUAL_GAP);
  gym.onDurable((before, after, events) => {
    crowd.hear(before, after, events);
    const { round } = store.getState();
    if (round !== null && after.open?.id !== round) rest('ready');
  });
  sound.onState((state) => {
    store.setState({ sound: state });
    const { phase, clock } = store.getState();
    if (state === 'interrupted' && clock && phase !== 'ready') void court.end('interrupted');
  });

  const court: Court = {
    store,
    sound,
    game,
    unlock: () => sound.unlock(),
    playCheck: () => void sound.plan([{ clip: 'sound-check', at: sound.now() + LEAD, gain: 1 }]),
    playCrowd: async () => {
      await sound.unlock();
      sound.setVolume(gym.store.getState().settings.volume);
      sound.crowd.enter();
      sound.crowd.swell(3, 1);
      later(4, () => sound.crowd.answer(true, 1));
      later(8, () => sound.crowd.leave());
    },
    heard: (heard) => store.setState({ heard }),
    setVolume: (volume) => sound.setVolume(volume),
    enter: () => {
      const round = open();
      if (!round || (store.getState().round === round.id && store.getState().phase !== 'ready')) return;
      const setting = round.pressure?.clock ?? null;
      const left = round.clockLeft ?? setting?.seconds ?? 0;
      const clock = setting
        ? readyClock(setting.seconds, setting.kind === 'round' ? left : setting.seconds)
        : null;
      // Taken up again after the buzzer, only the ball that was in the air is still open.
      const over = setting?.kind === 'round' && left <= 0;
      store.setState({ round: round.id, phase: over ? 'buzzer' : 'ready', clock, liveAt: null });
    },
    leave: (why) => {
      const { phase, clock, round: id } = store.getState();
      const round = open();
      if (!round || round.id !== id || phase === 'ready') return;
      // A relaxed round has nothing that runs on while nobody looks.
      if (why === 'hidden' && round.condition === 'relaxed') return;
      const left = clockLeft(round);
      rest('ready');
      store.setState({ clock: clock ? pauseClock(clock, sound.now()) : null });
      void gym.dispatch([{ type: 'RoundPaused', body: { round: round.id, why, clockLeft: left } }]);
    },
    go: async () => {
      const round = open();
      if (!round) return;
      await sound.unlock();
      sound.setVolume(gym.store.getState().settings.volume);
      if (round.state === 'paused') void gym.dispatch([{ type: 'RoundResumed', body: { round: round.id } }]);
      if (round.condition === 'relaxed') {
        store.setState({ phase: 'live' });
        return;
      }
      hush();
      if (round.pressure?.crowd) sound.crowd.enter();
      const start = sound.now() + LEAD;
      const liveAt = start + COUNT_FROM;
      planned.push(sound.plan(startCountdown(liveAt, COUNT_FROM, voice(), start)));
      const { clock } = store.getState();
      store.setState({ phase: 'countdown', liveAt, clock: clock ? run(clock, liveAt) : null });
      wakeAt(liveAt, goLive);
    },
    shot: (made, side) => {
      const round = open();
      if (round) tap(shotFacts(round, made, side));
    },
    count: (makes, taken) => {
      const round = open();
      if (round) tap(countFacts(round, makes, taken));
    },
    nothingInTheAir: () => {
      const round = open();
      if (!round || store.getState().phase !== 'buzzer') return;
      if (round.pressure?.clock?.kind === 'shot') tap(expiredFacts(round));
      else void court.end('time-up');
    },
    undo: (round) => {
      const undone = gym.dispatch(undoFacts(round));
      if (store.getState().phase === 'live') restartShotClock(round);
      return undone;
    },
    end: (why) => {
      const round = open();
      const facts = round ? [ending(round, why)] : [];
      rest('ready');
      return gym.dispatch(facts);
    },
  };
  return court;
}
