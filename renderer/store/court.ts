import { createStore, type StoreApi } from 'zustand/vanilla';

import type { RoundId } from '../basics/ids.ts';
import type { Seconds } from '../basics/units.ts';
import type { Solved } from '../games/solver.ts';
import type { Round } from '../log/book.ts';
import type { Ending, MissSide, PausedBy } from '../log/events.ts';
import type { Fact } from '../log/facts.ts';
import { countFacts, endFacts, expiredFacts, shotFacts, undoFacts } from '../games/play.ts';
import { othersIn } from '../games/gameOn.ts';
import { turnsOf } from '../log/roundCells.ts';
import { endsAt, leftAt, pauseClock, readyClock, type GameClock } from '../sound/gameClock.ts';
import { atClock, passes, withClock } from './courtFacts.ts';
import { courtPlans, type Later } from './courtPlans.ts';
import { crowdFor } from './crowdFor.ts';
import { solvedGame } from './gameChances.ts';
import type { Gym } from './gymStore.ts';
import type { GymSound, SoundState } from './ports.ts';
import { soundCheck, type SoundCheck } from './soundCheck.ts';

/** What a screen needs to draw the clock. */
export { leftAt, writeClock, type GameClock } from '../sound/gameClock.ts';
export type { Later } from './courtPlans.ts';

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
export interface Court extends Omit<SoundCheck, 'stop'> {
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
  /** The round's game, solved once; null without a mark. */
  game(round: Round): Solved | null;
}

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
  /** Raised whenever the court is left, so that what was begun before and comes back late does nothing. */
  let visits = 0;
  /** Turns used up when the clock ran out: what is undone since is entered again before the ball in the air is. */
  let due = 0;
  let solved: { round: RoundId; game: Solved | null } | null = null;

  const open = (): Round | null => gym.store.getState().ahead.open;
  /** The rest of the group of a round, as far as it is tapped in. */
  const others = (round: Round): Round[] => othersIn(gym.store.getState().ahead, round);
  const settings = () => gym.store.getState().settings;
  const plans = courtPlans(sound, later, () => settings().countdown);
  const check = soundCheck(sound, later, () => settings().volume);

  function game(round: Round): Solved | null {
    if (solved?.round !== round.id) {
      const { book } = gym.store.getState();
      solved = { round: round.id, game: solvedGame(book, round, othersIn(book, round)) };
    }
    return solved.game;
  }

  /** Judged by the clock itself: the page may hear of the buzzer late. */
  function heedBuzzer(): void {
    const { phase, clock } = store.getState();
    if (phase !== 'live' || !clock || sound.now() < endsAt(clock)) return;
    const round = open();
    due = round ? turnsOf(round).used : 0;
    store.setState({ phase: 'buzzer' });
  }

  function goLive(): void {
    const { clock } = store.getState();
    store.setState({ phase: 'live' });
    if (clock) plans.wakeAt(endsAt(clock), heedBuzzer);
    const round = open();
    if (round) crowd.expect(round, gym.store.getState().ahead);
  }

  /** The next shot's own clock, from now. */
  function restartShotClock(round: Round): void {
    const setting = round.pressure?.clock;
    if (setting?.kind !== 'shot' || round.state === 'ended') return;
    // Answered after a break at the buzzer: the next shot waits for the shooter to say go.
    if (round.state === 'paused') {
      rest('ready', readyClock(setting.seconds));
      return;
    }
    plans.hush();
    const clock = plans.run(readyClock(setting.seconds), sound.now());
    store.setState({ clock, phase: 'live' });
    plans.wakeAt(endsAt(clock), heedBuzzer);
  }

  /** Everything stands still, with this clock; as it is where none is given. */
  function rest(phase: 'ready' | 'buzzer', clock = store.getState().clock): void {
    plans.hush();
    crowd.leave();
    store.setState({ phase, liveAt: null, clock });
  }

  /** What the round clock shows now; null where the round has none. */
  function clockLeft(round: Round): Seconds | null {
    const { clock } = store.getState();
    return clock && round.pressure?.clock?.kind === 'round' ? leftAt(clock, sound.now()) : null;
  }

  /** Sends what ends the round. Where it cannot be saved the round is not over: it waits, with its clock as it was. */
  async function finish(round: Round, entries: readonly Fact[], why: Ending): Promise<boolean> {
    const { phase, clock } = store.getState();
    const stands = standing(clock);
    const left = clockLeft(round);
    const endings = endFacts(round, why, others(round)).map((fact) => atClock(fact, round.id, left));
    const saved = await gym.dispatch([...entries, ...endings]);
    if (!saved && open()?.id === round.id) rest(phase === 'buzzer' ? 'buzzer' : 'ready', stands);
    return saved;
  }

  /** Sends a tap to the log. The clock does not wait for it. */
  function tap(facts: readonly Fact[]): void {
    heedBuzzer();
    const { phase } = store.getState();
    const round = open();
    if (facts.length === 0 || !round || (phase !== 'live' && phase !== 'buzzer')) return;
    const left = clockLeft(round);
    const ended = facts.some(({ type }) => type === 'RoundEnded') && !facts.some(passes);
    const kept = ended ? facts.filter(({ type }) => type !== 'RoundEnded') : facts;
    const entries = kept.map((fact) => withClock(fact, left));
    const owed = phase === 'buzzer' && turnsOf(round).used < due;
    // A ball that was in the air at the round clock's buzzer is the last one.
    const last = phase === 'buzzer' && !owed && round.pressure?.clock?.kind === 'round';
    if (!ended && !last) {
      void gym.dispatch(entries);
      if (!owed) restartShotClock(round);
      return;
    }
    plans.hush();
    void finish(round, entries, ended ? 'played-out' : 'time-up');
    store.setState({ clock: null });
  }

  /** The clock as it stands now, or a full one for the next shot. */
  function standing(clock: GameClock | null): GameClock | null {
    if (!clock) return null;
    return open()?.pressure?.clock?.kind === 'shot' ? readyClock(clock.full) : pauseClock(clock, sound.now());
  }

  /** Pauses what is live. The buzzer's question stays: time that ran out is not given back. */
  function pause(why: PausedBy): void {
    heedBuzzer();
    const round = open();
    const { phase, clock } = store.getState();
    if (!round || phase === 'ready') return;
    const left = clockLeft(round);
    if (phase === 'buzzer') rest('buzzer');
    else rest('ready', standing(clock));
    void gym.dispatch([{ type: 'RoundPaused', body: { round: round.id, why, clockLeft: left } }]);
  }

  const crowd = crowdFor(sound.crowd, game, USUAL_GAP);
  gym.onDurable((before, after, events) => {
    crowd.hear(before, after, events);
    const { round } = store.getState();
    if (round === null || after.open?.id === round) return;
    // In a group the game goes on with whoever's turn it is.
    if (after.open && before.waiting.has(after.open.id)) store.setState({ round: after.open.id });
    else rest('ready');
  });
  sound.onState((state) => {
    store.setState({ sound: state });
    const round = open();
    if (state !== 'interrupted' || round?.condition !== 'pressured') return;
    // Before the first shot counts nothing is lost: back to the start of the countdown.
    if (store.getState().phase === 'countdown') {
      visits += 1;
      rest('ready', standing(store.getState().clock));
    } else pause('interrupted');
  });

  const court: Court = {
    store,
    sound,
    game,
    unlock: () => sound.unlock(),
    playCheck: () => check.playCheck(),
    playCrowd: () => check.playCrowd(),
    heard: (heard) => store.setState({ heard }),
    setVolume: (volume) => sound.setVolume(volume),
    enter: () => {
      const round = open();
      if (!round) return;
      const { round: here, phase } = store.getState();
      const together = others(round).some(({ id }) => id === here);
      if (phase !== 'ready' && (here === round.id || together)) return;
      const setting = round.pressure?.clock ?? null;
      const left = round.clockLeft ?? setting?.seconds ?? 0;
      const clock = setting
        ? readyClock(setting.seconds, setting.kind === 'round' ? left : setting.seconds)
        : null;
      // Taken up again after the buzzer, only the ball that was in the air is still open.
      const over = setting?.kind === 'round' && left <= 0;
      due = turnsOf(round).used;
      store.setState({ round: round.id, phase: over ? 'buzzer' : 'ready', clock, liveAt: null });
    },
    leave: (why) => {
      visits += 1;
      const round = open();
      if (!round || store.getState().round !== round.id) return;
      // A relaxed round has nothing that runs on while nobody looks.
      if (why === 'asked' || round.condition === 'pressured') pause(why);
    },
    go: async () => {
      const visit = ++visits;
      const state = await sound.unlock();
      const round = open();
      // Left, ended or begun again while the sound was being opened.
      if (!round || visit !== visits || store.getState().phase !== 'ready') return;
      if (state === 'interrupted' && round.condition === 'pressured') return;
      check.stop();
      sound.setVolume(settings().volume);
      if (round.state === 'paused') void gym.dispatch([{ type: 'RoundResumed', body: { round: round.id } }]);
      if (round.condition === 'relaxed') {
        store.setState({ phase: 'live' });
        return;
      }
      plans.hush();
      if (round.pressure?.crowd) sound.crowd.enter();
      const liveAt = plans.countIn();
      const { clock } = store.getState();
      store.setState({ phase: 'countdown', liveAt, clock: clock ? plans.run(clock, liveAt) : null });
      plans.wakeAt(liveAt, goLive);
    },
    shot: (made, side) => {
      const round = open();
      if (round) tap(shotFacts(round, made, side, others(round)));
    },
    count: (makes, taken) => {
      const round = open();
      if (round) tap(countFacts(round, makes, taken));
    },
    nothingInTheAir: () => {
      const round = open();
      if (!round || store.getState().phase !== 'buzzer') return;
      if (round.pressure?.clock?.kind === 'shot') tap(expiredFacts(round, others(round)));
      else void court.end('time-up');
    },
    undo: (round) => {
      heedBuzzer();
      const facts = undoFacts(round, others(round));
      if (facts.length > 0 && store.getState().phase === 'live') restartShotClock(round);
      return gym.dispatch(facts);
    },
    end: async (why) => {
      visits += 1;
      const round = open();
      const over = round ? finish(round, [], why) : true;
      rest('ready');
      return over;
    },
  };
  return court;
}
