import { othersIn } from '../../renderer/games/gameOn.ts';
import { shotFacts } from '../../renderer/games/play.ts';
import type { Stop } from '../../renderer/court/cards.ts';
import type { Body, GroupTurns } from '../../renderer/log/events.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import type { PressureSetup } from '../../renderer/pressure/ingredients.ts';
import { diary, INES, PRESSURE, started, type Diary } from '../log/diary.ts';
import { SMALL_CARD } from './plans.ts';

/** How a round of a game starts, on the small card unless told otherwise. */
export function gameSetup(
  plan: GamePlan,
  change: Partial<PressureSetup> & { readonly card?: readonly Stop[] } = {},
): Partial<Body<'RoundStarted'>> {
  const { card = SMALL_CARD, ...setup } = change;
  return {
    condition: 'pressured',
    card: { id: 'small', name: 'A small card', stops: [...card] },
    pressure: {
      ...PRESSURE,
      mark: null,
      game: { name: 'A game', plan, chance: null },
      ...setup,
      ingredients: [],
    },
  };
}

/** Several shooters before the first shot of a game they play together, each in a visit of their own. */
export function groupOf(
  plan: GamePlan,
  turns: GroupTurns,
  shooters: readonly string[],
  change: Parameters<typeof gameSetup>[1] = {},
): Diary {
  const log = diary();
  for (const shooter of shooters) {
    const name = `${shooter[0]?.toUpperCase()}${shooter.slice(1)}`;
    log.write('ShooterAdded', { ...INES, shooter, name });
    log.write('SessionStarted', { session: `visit ${shooter}`, shooter, date: '2026-11-25' });
  }
  for (const [at, shooter] of shooters.entries()) {
    log.write('RoundStarted', {
      ...started({ round: `round ${shooter}`, session: `visit ${shooter}`, shooter }),
      ...gameSetup(plan, change),
      group: { id: 'together', place: at + 1, turns },
    });
  }
  return log;
}

/** One tap for whoever is on court. */
export function shoot(log: Diary, made: boolean): void {
  const book = log.book();
  if (book.open) log.tap(shotFacts(book.open, made, null, othersIn(book, book.open)));
}
