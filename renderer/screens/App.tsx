import { lazy, Suspense, useSyncExternalStore } from 'react';

import { readAddress, type Address } from '../store/places.ts';
import { BenchScreen } from './BenchScreen.tsx';
import { gamesScreen } from './gamesLater.ts';
import { useGym, useShooter } from './gymContext.ts';
import { LogTrouble, SaveTrouble } from './LogTrouble.tsx';
import { ShooterScreen } from './ShooterScreen.tsx';
import { WelcomeScreen } from './WelcomeScreen.tsx';

// What the first screen does not need comes when it is asked for.
const RoundSetupScreen = lazy(() =>
  import('./RoundSetupScreen.tsx').then((file) => ({ default: file.RoundSetupScreen })),
);
const GameSetupScreen = lazy(() =>
  import('./GameSetupScreen.tsx').then((file) => ({ default: file.GameSetupScreen })),
);
const PairScreen = lazy(() => import('./PairScreen.tsx').then((file) => ({ default: file.PairScreen })));
const DoubleScreen = lazy(() =>
  import('./DoubleScreen.tsx').then((file) => ({ default: file.DoubleScreen })),
);
const GameScreen = lazy(() => import('./GameScreen.tsx').then((file) => ({ default: file.GameScreen })));
const TogetherScreen = lazy(() =>
  import('./TogetherScreen.tsx').then((file) => ({ default: file.TogetherScreen })),
);
const DuelScreen = lazy(() => import('./DuelScreen.tsx').then((file) => ({ default: file.DuelScreen })));
const CourtScreen = lazy(() => import('./CourtScreen.tsx').then((file) => ({ default: file.CourtScreen })));
const AfterScreen = lazy(() => import('./AfterScreen.tsx').then((file) => ({ default: file.AfterScreen })));
const ResultScreen = lazy(() =>
  import('./ResultScreen.tsx').then((file) => ({ default: file.ResultScreen })),
);
const MethodScreen = lazy(() =>
  import('./MethodScreen.tsx').then((file) => ({ default: file.MethodScreen })),
);
const RoundsScreen = lazy(() =>
  import('./RoundsScreen.tsx').then((file) => ({ default: file.RoundsScreen })),
);
const CardsScreen = lazy(() => import('./CardsScreen.tsx').then((file) => ({ default: file.CardsScreen })));
const StakesScreen = lazy(() =>
  import('./StakesScreen.tsx').then((file) => ({ default: file.StakesScreen })),
);
const FilesScreen = lazy(() => import('./FilesScreen.tsx').then((file) => ({ default: file.FilesScreen })));
const SoundScreen = lazy(() => import('./SoundScreen.tsx').then((file) => ({ default: file.SoundScreen })));

/** The app: one screen at a time, chosen by the address. */
export function App() {
  const log = useGym((state) => state.log);
  const address = useAddress();
  if (log.is === 'failed') return <LogTrouble error={log.error} />;
  return (
    <>
      <SaveTrouble />
      <Suspense fallback={<p className="page quiet">One moment …</p>}>
        <Screen {...address} ready={log.is === 'ready'} />
      </Suspense>
    </>
  );
}

function Screen({ place, about, ready }: Address & { readonly ready: boolean }) {
  const shooter = useShooter();
  // The start screen stands while the log is still being read; everything else needs it.
  if (place === 'welcome' || !ready) return <WelcomeScreen ready={ready} />;
  if (place === 'shooter') return <ShooterScreen key={about} about={about} />;
  if (place === 'sound') return <SoundScreen />;
  if (place === 'files') return <FilesScreen />;
  if (!shooter) return <ShooterScreen about={null} />;
  switch (place) {
    case 'bench':
      return <BenchScreen shooter={shooter} />;
    case 'relaxed':
    case 'pressured':
      if (place === 'pressured' && about !== null) {
        return <GameSetupScreen key={about} shooter={shooter} about={about} />;
      }
      return <RoundSetupScreen key={place} shooter={shooter} condition={place} />;
    case 'pair':
      return <PairScreen key={about} shooter={shooter} about={about} />;
    case 'double':
      return <DoubleScreen key={about} shooter={shooter} about={about} />;
    case 'games':
      return <gamesScreen.Screen shooter={shooter} />;
    case 'game':
      return <GameScreen key={about} shooter={shooter} about={about} />;
    case 'together':
      return <TogetherScreen key={about} shooter={shooter} about={about} />;
    case 'duel':
      return <DuelScreen key={about} shooter={shooter} about={about} />;
    case 'court':
      return <CourtScreen />;
    case 'after':
      return <AfterScreen key={about} about={about} />;
    case 'result':
      return <ResultScreen shooter={shooter} />;
    case 'method':
      return <MethodScreen shooter={shooter} />;
    case 'rounds':
      return <RoundsScreen shooter={shooter} />;
    case 'cards':
      return <CardsScreen shooter={shooter} />;
    case 'stakes':
      return <StakesScreen shooter={shooter} />;
  }
}

function useAddress(): Address {
  const hash = useSyncExternalStore(
    (changed) => {
      window.addEventListener('hashchange', changed);
      return () => window.removeEventListener('hashchange', changed);
    },
    () => window.location.hash,
  );
  return readAddress(hash === '' ? '#/welcome' : hash);
}
