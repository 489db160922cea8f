import type { ShooterId } from '../basics/ids.ts';
import type { Opponent } from '../pressure/gamePlan.ts';
import { shortDayWords } from './dayWords.ts';
import { useGym } from './gymContext.ts';

/** What shooters are called. */
export function useNames(): (shooter: ShooterId) => string {
  const shooters = useGym(({ book }) => book.shooters);
  return (shooter) => shooters.get(shooter)?.name ?? 'Someone';
}

/** What an opponent is called who is not on court. */
export function useOpponentName(against: Opponent): string {
  const date = useGym(({ book }) =>
    against.kind === 'own round' ? book.rounds.get(against.round)?.date : undefined,
  );
  if (against.kind !== 'own round') return 'Opponent';
  return date === undefined ? 'Your earlier round' : `Your round of ${shortDayWords(date)}`;
}
