import { createStore } from 'zustand/vanilla';

import type { Seconds } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import type { Ending, PausedBy } from '../log/events.ts';
import type { Fact } from '../log/facts.ts';
import { clockFor } from '../games/clocks.ts';
import { countFacts, endFacts, expiredFacts, leaveFacts, shotFacts, undoFacts } from '../games/play.ts';
import { othersIn } from '../games/gameOn.ts';
import { turnsOf } from '../log/roundCells.ts';
import { endsAt, leftAt, pauseClock, readyClock, type GameClock } from '../sound/gameClock.ts';
import { atClock, passes, withClock } from './courtFacts.ts';
import { courtGames } from './courtGames.ts';
import { courtPlans, type Later } from './courtPlans.ts';
import type { Court, CourtState, Phase } from './courtState.ts';
import { crowdFor } from './crowdFor.ts';
import type { Gym } from './gymStore.ts';
import type { GymSound } from './ports.ts';
import { soundCheck } from './soundCheck.ts';

/** What a screen needs to draw the clock. */
export { leftAt, writeClock, type GameClock } from '../sound/gameClock.ts';
export type { Later } from './courtPlans.ts';
export type { Court, Phase } from './courtState.ts';

/** The crowd knows roughly when the next shot comes. */
const USUAL_GAP: Seconds = 6;

/** Whether each shot begins with a clock of its own that has to be set and counted in. */
function startsAnew({ pressure }: Round): boolean {
  return pressure?.game?.plan.family === 'last shot';
}

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

  const open = (): Round | null => gym.store.getState().ahead.open;
  /** The rest of the group of a round, as far as it is tapped in. */
  const others = (round: Round): Round[] => othersIn(gym.store.getState().ahead, round);
  /** Whether the court stands at this round, or at one of its group: the turn may have passed on since. */
  const isHere = (round: Round): boolean => {
    const { round: here } = store.getState();
    return [round, ...others(round)].some(({ id }) => id === here);
  };
  const turnsTaken = (round: Round): number =>
    [round, ...others(round)].reduce((sum, one) => sum + turnsOf(one).used, 0);
  const settings = () => gym.store.getState().settings;
  const plans = courtPlans(sound, later, () => settings().countdown);
  const games = courtGames(() => gym.store.getState().book);
  const check = soundCheck(sound, later, () => settings().volume);

  /** Judged by the clock itself: the page may hear of the buzzer late. */
  function heedBuzzer(): void {
    const { phase, clock } = store.getState();
    if (phase !== 'live' || !clock || sound.now() < endsAt(clock)) return;
    const round = open();
    due = round ? turnsTaken(round) : 0;
    store.setState({ phase: 'buzzer' });
  }

  function goLive(): void {
    const { clock } = store.getState();
    store.setState({ phase: 'live' });
    if (clock) plans.wakeAt(endsAt(clock), heedBuzzer);
    const round = open();
    if (round) crowd.expect(round, gym.store.getState().ahead);
  }

  /** The clock of the next turn as it stands before it; null without one. */
  function clockAhead(round: Round): GameClock | null {
    const setting = clockFor(round);
    if (!setting) return null;
    return readyClock(setting.seconds, setting.kind === 'round' ? (round.clockLeft ?? undefined) : undefined);
  }

  /** After a turn, or one that was taken back: the next shot has its own clock, from now or once the shooter says go. */
  function goOn(before: Round): void {
    const round = open();
    if (!round) return;
    if (round.id !== before.id && round.group?.turns === 'game') {
      rest('ready');
      court.enter();
      return;
    }
    if (clockFor(round)?.kind !== 'shot') return;
    // Answered after a break at the buzzer, or from a clock that is different every time.
    if (before.state === 'paused' || round.state === 'paused' || startsAnew(round)) {
      rest('ready', clockAhead(round));
      return;
    }
    plans.hush();
    const ready = clockAhead(round);
    const clock = ready && plans.run(ready, sound.now());
    store.setState({ clock, phase: 'live' });
    if (clock) plans.wakeAt(endsAt(clock), heedBuzzer);
  }

  /** Before a shot: whoever is back has their own countdown, and the turn its own clock. */
  function comeBack(before: Round, phase: Phase): void {
    const other = open()?.id !== before.id;
    if (phase === 'countdown' && (other || startsAnew(before))) rest('ready');
    if (store.getState().phase === 'ready') court.enter();
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
    return clock && clockFor(round)?.kind === 'round' ? leftAt(clock, sound.now()) : null;
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
    const owed = phase === 'buzzer' && turnsTaken(round) < due;
    // A ball that was in the air at the round clock's buzzer is the last one.
    const last = phase === 'buzzer' && !owed && clockFor(round)?.kind === 'round';
    const kept = ended || last ? facts.filter((fact) => !passes(fact) && fact.type !== 'RoundEnded') : facts;
    const entries = kept.map((fact) => atClock(withClock(fact, left), round.id, left));
    if (!ended && !last) {
      void gym.dispatch(entries);
      if (!owed) goOn(round);
      return;
    }
    plans.hush();
    void finish(round, entries, ended ? 'played-out' : 'time-up');
    store.setState({ clock: null });
  }

  /** The clock as it stands now, or a full one for the next shot. */
  function standing(clock: GameClock | null): GameClock | null {
    const round = open();
    if (!clock || !round) return null;
    return clockFor(round)?.kind === 'shot' ? readyClock(clock.full) : pauseClock(clock, sound.now());
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

  const crowd = crowdFor(sound.crowd, (round) => games.solved(round), USUAL_GAP);
  gym.onDurable((before, after, events) => {
    crowd.hear(before, after, events);
    const { round } = store.getState();
    if (round === null || after.open?.id === round) return;
    // In a group the game goes on with whoever's turn it is.
    const next = after.open && before.waiting.has(after.open.id) ? after.open : null;
    if (!next || next.group?.turns === 'game') rest('ready');
    if (!next) return;
    store.setState({ round: next.id });
    court.enter();
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
    outlook: (round, together) => games.outlook(round, together),
    unlock: () => sound.unlock(),
    playCheck: () => check.playCheck(),
    playCrowd: () => check.playCrowd(),
    heard: (heard) => store.setState({ heard }),
    setVolume: (volume) => sound.setVolume(volume),
    enter: () => {
      const round = open();
      if (!round) return;
      if (store.getState().phase !== 'ready' && isHere(round)) return;
      const clock = clockAhead(round);
      // Taken up again after the buzzer, only the ball that was in the air is still open.
      const over = clock !== null && clock.left <= 0;
      due = turnsTaken(round);
      store.setState({ round: round.id, phase: over ? 'buzzer' : 'ready', clock, liveAt: null });
    },
    leave: (why) => {
      visits += 1;
      const round = open();
      if (!round || !isHere(round)) return;
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
      const paused = [round, ...others(round)].filter((one) => one.state === 'paused');
      void gym.dispatch(paused.map(({ id }) => ({ type: 'RoundResumed', body: { round: id } })));
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
      if (clockFor(round)?.kind === 'shot') tap(expiredFacts(round, others(round)));
      else void court.end('time-up');
    },
    undo: (round) => {
      heedBuzzer();
      const facts = undoFacts(round, others(round));
      const saved = gym.dispatch(facts);
      const { phase } = store.getState();
      if (facts.length > 0 && phase === 'live') goOn(round);
      else if (facts.length > 0 && round.state !== 'ended') comeBack(round, phase);
      return saved;
    },
    end: async (why) => {
      visits += 1;
      const round = open();
      const over = round ? finish(round, [], why) : true;
      rest('ready');
      return over;
    },
    sendOff: (leaver) => {
      visits += 1;
      const round = open();
      rest('ready', standing(store.getState().clock));
      return gym.dispatch(round ? leaveFacts(round, leaver, others(round)) : []);
    },
  };
  return court;
}
