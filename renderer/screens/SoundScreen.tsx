import { useStore } from 'zustand';

import type { SoundState } from '../store/ports.ts';
import { useDoors, useGym } from './gymContext.ts';
import { Choice } from './parts/Choice.tsx';
import { Page } from './parts/Page.tsx';
import { Volume } from './parts/Volume.tsx';

const STATE_WORDS: Readonly<Record<SoundState, string>> = {
  locked: 'The sound is off. One touch turns it on.',
  running: 'The sound is on.',
  interrupted:
    'The device has taken the sound away: a call, another app, or the loudspeaker is gone. Touch “Play the voice”.',
  silent:
    'This device has no loudspeaker that the browser can use. Every call is also written on the screen.',
};

/** Sound and light of this device. */
export function SoundScreen() {
  const { gym, court } = useDoors();
  const sound = useStore(court.store, (state) => state.sound);
  const { countdown, theme } = useGym((state) => state.settings);
  const play = async () => {
    await court.unlock();
    court.playCheck();
  };
  return (
    <Page title="Sound and light">
      <div className="columns">
        <section className="panel">
          <h2>Sound</h2>
          <p role="status">{STATE_WORDS[sound]}</p>
          <button type="button" className="button main" onClick={() => void play()}>
            Play the voice
          </button>
          <button type="button" className="button" onClick={() => void court.playCrowd()}>
            Hear the crowd
          </button>
          <Volume />
          <p className="quiet">
            How loud it really is, nobody can say without a meter at your ear: the same setting is quiet on
            one loudspeaker and loud on another.
          </p>
        </section>
        <section className="panel">
          <Choice
            question="Countdowns"
            answers={[
              { value: 'voice', words: 'A voice' },
              { value: 'beeps', words: 'Beeps' },
            ]}
            value={countdown}
            onChoose={(next) => gym.set({ countdown: next })}
          />
          <Choice
            question="Screen"
            hint="Dark for a lit gym, light for the sun."
            answers={[
              { value: 'dark', words: 'Dark' },
              { value: 'light', words: 'Light' },
            ]}
            value={theme}
            onChoose={(next) => gym.set({ theme: next })}
          />
        </section>
      </div>
    </Page>
  );
}
