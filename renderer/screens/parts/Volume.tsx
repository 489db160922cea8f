import { useId } from 'react';

import { useDoors, useGym } from '../gymContext.ts';

/** The volume, with the caution beside it. */
export function Volume() {
  const { gym, court } = useDoors();
  const id = useId();
  const volume = useGym((state) => state.settings.volume);
  return (
    <div className="field">
      <label htmlFor={id}>How loud: {Math.round(volume * 100)} of 100</label>
      <input
        id={id}
        type="range"
        min={0}
        max={100}
        step={5}
        value={Math.round(volume * 100)}
        onChange={(change) => {
          const next = Number(change.target.value) / 100;
          gym.set({ volume: next });
          court.setVolume(next);
        }}
      />
      <p className="quiet">
        Loud sound can hurt your hearing for good, and it does not hurt while it does. Set it as low as still
        feels like a crowd. If you must raise your voice to talk at arm’s length, it is too loud. With
        children, lower still.
      </p>
    </div>
  );
}
