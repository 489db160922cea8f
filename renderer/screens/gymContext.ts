import { createContext, useContext } from 'react';
import { useStore } from 'zustand';

import { invariant } from '../basics/invariant.ts';
import type { Shooter } from '../log/book.ts';
import type { Court } from '../store/court.ts';
import type { Gym, GymState } from '../store/gymStore.ts';
import type { Display } from '../store/ports.ts';
import type { StudyRoom, StudyState } from '../store/study.ts';

/** What every screen can reach. */
export interface Doors {
  readonly gym: Gym;
  readonly court: Court;
  readonly studyRoom: StudyRoom;
  readonly display: Display;
}

export const DoorsContext = createContext<Doors | null>(null);

export function useDoors(): Doors {
  const doors = useContext(DoorsContext);
  invariant(doors, 'screens stand inside the app');
  return doors;
}

/** A part of the state; the screen is drawn again only when that part changes. */
export function useGym<T>(part: (state: GymState) => T): T {
  return useStore(useDoors().gym.store, part);
}

/** A part of what is known about the drop of the shooter at the bench. */
export function useStudy<T>(part: (state: StudyState) => T): T {
  return useStore(useDoors().studyRoom.store, part);
}

/** The shooter at the bench, or null before there is one. */
export function useShooter(): Shooter | null {
  return useGym(({ book, settings }) =>
    settings.shooter ? (book.shooters.get(settings.shooter) ?? null) : null,
  );
}
