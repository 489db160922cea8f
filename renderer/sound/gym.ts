import type { Seconds } from '../basics/units.ts';
import type { CrowdNoise } from './crowdNoise.ts';
import type { Cue, Planned } from './cues.ts';
import { BROWSER, type Place } from './place.ts';
import type { Speaker } from './speaker.ts';
import { stallWatch } from './stallWatch.ts';
import { timeline } from './timeline.ts';

type State = 'locked' | 'running' | 'interrupted' | 'silent';

/** The gym's loudspeaker and its clock, as `store/ports.ts` asks for them. */
export interface Gym {
  readonly crowd: CrowdNoise;
  state(): State;
  onState(changed: (state: State) => void): () => void;
  unlock(): Promise<State>;
  now(): Seconds;
  shownNow(): Seconds;
  setVolume(volume: number): void;
  plan(cues: readonly Cue[]): Planned;
}

/** A context that may start does so well within this. */
const START_WITHIN: Seconds = 1.5;
/** Slower clips come when they come; a cue that is due before is dropped. */
const LOAD_WITHIN: Seconds = 4;
const LOOK_EVERY: Seconds = 0.5;
const QUIET = 0.3;
const NOTHING: Planned = { cancel: () => {} };

/**
 * Makes the gym's sound. Nothing sounds before `unlock`, and the code for it is fetched when the page is idle, so that
 * `unlock` can open the loudspeaker within the touch that asked for it.
 */
export function createGymSound(place: Place = BROWSER): Gym {
  const clock = timeline(() => place.steady());
  const begun = { steady: place.steady(), calendar: place.calendar() };
  const listeners = new Set<(state: State) => void>();
  let state: State = 'locked';
  let volume = QUIET;
  let speaker: Speaker | null = null;
  let openSpeaker: ((volume: number) => Speaker | null) | null = null;
  let shown: Seconds = Number.NEGATIVE_INFINITY;
  let stalled = stallWatch();
  let lookedAt: Seconds = 0;
  let unlocking: Promise<State> | null = null;

  const sounding = (): Speaker | null => (state === 'running' || state === 'interrupted' ? speaker : null);

  function become(next: State): State {
    if (next === state) return state;
    const audible = sounding();
    state = next;
    if (!audible && speaker && sounding()) {
      const { context } = speaker;
      clock.follow(() => context.currentTime);
    } else if (audible && !sounding()) clock.follow(() => place.steady());
    stalled = stallWatch();
    lookedAt = speaker?.context.currentTime ?? 0;
    for (const changed of listeners) changed(next);
    return state;
  }

  async function fetchSpeaker(): Promise<void> {
    const part = await place.fetchSpeaker();
    openSpeaker = (level) => part.openSpeaker(level);
  }

  /** Starts the audio clock. @returns whether it moves */
  async function start({ context }: Speaker): Promise<boolean> {
    const before = context.currentTime;
    // Where it is not allowed, this neither resolves nor rejects; the clock tells.
    context.resume().catch(() => {});
    const moves = () => context.state === 'running' && context.currentTime > before;
    for (const by = place.steady() + START_WITHIN; !moves() && place.steady() < by;) {
      // oxlint-disable-next-line no-await-in-loop
      await place.sleep(0.02);
    }
    return moves();
  }

  function unlock(): Promise<State> {
    // A second touch may be the first that the browser takes for one.
    if (unlocking) speaker?.context.resume().catch(() => {});
    unlocking ??= tryUnlock().finally(() => {
      unlocking = null;
    });
    return unlocking;
  }

  async function tryUnlock(): Promise<State> {
    try {
      // No pause where it is there already: some browsers only start sound within the touch itself.
      if (!openSpeaker) await fetchSpeaker();
    } catch {
      return become('silent');
    }
    speaker ??= opened();
    if (!speaker) return become('silent');
    const opening = speaker;
    const loading = Promise.race([opening.load(), place.sleep(LOAD_WITHIN).then(() => true)]);
    if (!(await start(opening))) {
      if (sounding()) return become('interrupted');
      return become(opening.context.state === 'running' || place.touched() ? 'silent' : 'locked');
    }
    return become((await loading) ? 'running' : 'silent');
  }

  function opened(): Speaker | null {
    const fresh = openSpeaker?.(volume) ?? null;
    fresh?.context.addEventListener('statechange', () => heed(fresh));
    return fresh;
  }

  function heed({ context }: Speaker): void {
    if (context.state === 'closed') {
      become('silent');
      speaker = null;
    } else if (context.state !== 'running') {
      if (state === 'running') become('interrupted');
    } else if (state === 'interrupted') become('running');
    else if (state === 'locked' && !unlocking) void unlock();
  }

  function look(): void {
    const audible = sounding();
    if (!audible) return;
    const elapsed = Math.max(place.steady() - begun.steady, place.calendar() - begun.calendar);
    const { currentTime } = audible.context;
    if (stalled(elapsed, currentTime)) become('interrupted');
    else if (state === 'interrupted' && currentTime > lookedAt) become('running');
    lookedAt = currentTime;
  }

  place.every(LOOK_EVERY, look);
  place.whenIdle(() => void fetchSpeaker().catch(() => {}));
  place.onWake(() => {
    if (state === 'interrupted') speaker?.context.resume().catch(() => {});
  });

  return {
    state: () => state,
    onState: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    unlock,
    now: () => clock.now(),
    shownNow: () => {
      const audible = sounding();
      shown = Math.max(shown, audible ? clock.fromSource(audible.shownTime()) : clock.now());
      return shown;
    },
    setVolume: (next) => {
      volume = Math.max(0, Math.min(1, next));
      speaker?.setVolume(volume);
    },
    plan: (cues) => sounding()?.plan(cues.map((cue) => ({ ...cue, at: clock.toSource(cue.at) }))) ?? NOTHING,
    crowd: {
      enter: () => sounding()?.crowd.enter(),
      swell: (seconds, weight) => sounding()?.crowd.swell(seconds, weight),
      answer: (made, weight) => sounding()?.crowd.answer(made, weight),
      leave: () => sounding()?.crowd.leave(),
    },
  };
}
