import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { isUuid, uuidV7 } from '../../renderer/basics/ids.ts';
import type { LogEvent } from '../../renderer/log/envelope.ts';
import { DoorsContext } from '../../renderer/screens/gymContext.ts';
import { createCourt } from '../../renderer/store/court.ts';
import { createGym, type Gym } from '../../renderer/store/gymStore.ts';
import { fakeWorld } from '../store/fakeWorld.ts';
import { fakeSound, gymLog } from './fakeGym.ts';

/** A gym whose log holds these events, open. */
export async function openGym(events: readonly LogEvent[]): Promise<Gym> {
  const rng = rngFromSeed(5);
  // The diary's readable ids stand for what an earlier visit wrote.
  const stored = events.map((event): LogEvent =>
    isUuid(event.id) ? event : { ...event, id: uuidV7(event.at, rng.bytes()) },
  );
  const gym = createGym(fakeWorld(gymLog(stored)));
  await gym.open(false);
  return gym;
}

/** A screen as it stands with this gym, as markup. */
export function drawn(gym: Gym, screen: ReactNode): string {
  const sound = fakeSound();
  // React draws without a page from the state a store began with; here that is the state it has.
  const store = { ...gym.store, getInitialState: gym.store.getState };
  const doors = {
    gym: { ...gym, store },
    court: createCourt(gym, sound, sound.later),
    studyRoom: undefined as never,
    display: undefined as never,
  };
  return renderToStaticMarkup(<DoorsContext value={doors}>{screen}</DoorsContext>);
}
