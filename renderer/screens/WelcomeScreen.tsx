import { useState } from 'react';
import { useStore } from 'zustand';

import type { SoundState } from '../store/ports.ts';
import { writeAddress } from '../store/places.ts';
import { useDoors, useGym } from './gymContext.ts';
import { Page } from './parts/Page.tsx';
import { Volume } from './parts/Volume.tsx';

type Step = 'start' | 'listening' | 'nothing-heard';

/** The start screen: turns the sound on by a touch, and asks whether it is heard. Stands while the log is read. */
export function WelcomeScreen({ ready }: { readonly ready: boolean }) {
  const { court } = useDoors();
  const sound = useStore(court.store, (state) => state.sound);
  const knows = useGym(
    ({ book, settings }) => settings.shooter !== null && book.shooters.has(settings.shooter),
  );
  const [step, setStep] = useState<Step>('start');

  const goOn = (heard: boolean) => {
    court.heard(heard);
    window.location.hash = writeAddress(knows ? 'bench' : 'shooter');
  };
  const turnOn = async () => {
    setStep('listening');
    await court.unlock();
    court.playCheck();
  };

  const withoutSound = (
    <button type="button" className="button" disabled={!ready} onClick={() => goOn(false)}>
      Go on without sound
    </button>
  );

  return (
    <Page title="Loud Gym" first>
      <p className="lead">
        The empty gym is quiet, and the shot falls. This app makes it loud on purpose: a clock, a crowd,
        something on the line. Then it tells you honestly what that does to your shot.
      </p>
      <div className="columns">
        {step === 'start' ? (
          <section className="panel">
            <h2>First, the sound</h2>
            <p>One touch turns it on. It starts quiet.</p>
            <button type="button" className="button main slab" onClick={() => void turnOn()}>
              <span className="slab-name">Turn the sound on</span>
              <span className="slab-words">You will hear a voice</span>
            </button>
            {withoutSound}
          </section>
        ) : (
          <section className="panel" aria-live="polite">
            <h2>{step === 'listening' ? 'Do you hear the voice?' : 'Let us find the sound'}</h2>
            {step === 'nothing-heard' ? (
              <NothingHeard sound={sound} />
            ) : (
              <p>Listen where you will be shooting from.</p>
            )}
            <button type="button" className="button main" disabled={!ready} onClick={() => goOn(true)}>
              I hear it
            </button>
            <button type="button" className="button" onClick={() => void turnOn()}>
              Play it again
            </button>
            {step === 'listening' ? (
              <button type="button" className="button" onClick={() => setStep('nothing-heard')}>
                I hear nothing
              </button>
            ) : (
              withoutSound
            )}
          </section>
        )}
        <section className="panel">
          <Volume />
        </section>
      </div>
      {ready ? null : <p className="quiet">Reading your records …</p>}
    </Page>
  );
}

function NothingHeard({ sound }: { readonly sound: SoundState }) {
  if (sound === 'silent') {
    return (
      <p>
        This device has no loudspeaker that the browser can use. Every call is also written on the screen.
      </p>
    );
  }
  return (
    <ul>
      <li>Turn the device’s own volume up a little, and its mute switch off.</li>
      <li>With a wireless speaker: is it on, and connected to this device?</li>
      <li>Move the slider to the right in small steps, and play it again.</li>
    </ul>
  );
}
