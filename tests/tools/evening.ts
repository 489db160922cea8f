import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { isUuid, uuidV7 } from '../../renderer/basics/ids.ts';
import type { Seconds } from '../../renderer/basics/units.ts';
import type { Round } from '../../renderer/log/book.ts';
import type { LogEvent } from '../../renderer/log/envelope.ts';
import { createCourt, leftAt, type Court, type Phase } from '../../renderer/store/court.ts';
import { createGym, type Gym } from '../../renderer/store/gymStore.ts';
import type { SoundState } from '../../renderer/store/ports.ts';
import { onCourt, PRESSURE, type started } from '../log/diary.ts';
import { fakeWorld } from '../store/fakeWorld.ts';
import { fakeSound, gymLog, type FakeSound, type GymLog } from './fakeGym.ts';

/* An evening at the fake gym: the court as the app builds it, entered with a round that waits. */

export interface Evening {
  readonly gym: Gym;
  readonly court: Court;
  readonly sound: FakeSound;
  readonly log: GymLog;
  /** The round on court, with the taps on their way. @throws Error where none is */
  round(): Round;
  /** Moves the clock, and lets whatever was asked for come back. */
  pass(seconds: Seconds): Promise<void>;
  /** Says go and waits through the countdown: live from then on. */
  begin(): Promise<void>;
}

/** Lets promises come back, so that what waited for them goes on. */
export const settled = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** What the log of this evening holds where Ines stands before a round she has just set up. */
export function beforeRound(change: Partial<ReturnType<typeof started>> = {}): readonly LogEvent[] {
  return onCourt(change).events;
}

/** The setup of a pressured round, without a clock or a crowd unless told otherwise. */
export function pressured(change: Partial<typeof PRESSURE> = {}): Partial<ReturnType<typeof started>> {
  const setup = { ...PRESSURE, ...change };
  return { condition: 'pressured', pressure: { ...setup, ingredients: [...setup.ingredients] } };
}

/** Opens the app on a log, as after a start or a crash, and enters the court. */
export async function evening(events: readonly LogEvent[]): Promise<Evening> {
  const rng = rngFromSeed(5);
  // The diary's readable ids stand for what an earlier visit wrote.
  const log = gymLog(
    events.map((event) => (isUuid(event.id) ? event : { ...event, id: uuidV7(event.at, rng.bytes()) })),
  );
  let at = Math.max(...events.map((event) => event.at));
  const gym = createGym({
    ...fakeWorld(log),
    at: () => {
      at += 1000;
      return at;
    },
  });
  const sound = fakeSound();
  const court = createCourt(gym, sound, sound.later);
  await gym.open(false);
  court.enter();
  const pass = async (seconds: Seconds) => {
    sound.pass(seconds);
    await settled();
  };
  return {
    gym,
    court,
    sound,
    log,
    pass,
    round: () => {
      const { open } = gym.store.getState().ahead;
      if (!open) throw new Error('no round is on court');
      return open;
    },
    begin: async () => {
      await court.go();
      const { liveAt } = court.store.getState();
      if (liveAt !== null) await pass(liveAt - sound.now());
    },
  };
}

/** An evening whose round is live. */
export async function live(events: readonly LogEvent[]): Promise<Evening> {
  const night = await evening(events);
  await night.begin();
  return night;
}

/** Sound that is still being opened, and the hand that opens it. */
export function opening(night: Evening): (state: SoundState) => Promise<void> {
  let answer: (state: SoundState) => void = () => {};
  const answered = new Promise<SoundState>((resolve) => {
    answer = resolve;
  });
  night.sound.unlocks = () => answered;
  return (state) => {
    answer(state);
    return settled();
  };
}

/* What can be seen of an evening. */

export const phase = ({ court }: Evening): Phase => court.store.getState().phase;

/** What was made durable since the app was opened, by kind. */
export const said = ({ log }: Evening): string[] => log.said().map(({ type }) => type);

/** The round of the diary, once it is over. */
export const over = ({ gym }: Evening): Round | undefined => gym.store.getState().book.rounds.get('round 1');

/** What the clock shows; null where there is none. */
export function shown({ court, sound }: Evening): Seconds | null {
  const { clock } = court.store.getState();
  return clock ? leftAt(clock, sound.now()) : null;
}

/** The buzzers that are planned and not called off, by their moment. */
export const buzzers = ({ sound }: Evening): Seconds[] =>
  sound.plans.flatMap(({ cues, cancelledAt }) =>
    cancelledAt === null ? cues.filter(({ clip }) => clip === 'buzzer').map(({ at }) => at) : [],
  );
