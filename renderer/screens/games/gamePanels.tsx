import type { ReactNode } from 'react';

import type { RuleSet } from '../../court/ruleSets.ts';
import type { PressureWish } from '../../store/pressureWish.ts';
import { LastShotClock } from './ClockForm.tsx';
import { GamePanel } from './GamePanel.tsx';
import type { GameInForm } from './useGameToPlay.ts';

/** What stands in the form of a pressured round in place of the mark, and for last shots in place of the clock. */
export function gamePanels(
  { game, toPlay, hard, setHard, shots }: GameInForm,
  wish: PressureWish,
  rules: RuleSet,
  onWish: (wish: PressureWish) => void,
): { mark: ReactNode; clock?: ReactNode } {
  const mark = (
    <GamePanel
      game={game}
      toPlay={toPlay}
      hard={hard}
      onHard={setHard}
      shots={shots}
      showChance={wish.showChance}
      onShowChance={(showChance) => onWish({ ...wish, showChance })}
    />
  );
  if (game.plan.family !== 'last shot') return { mark };
  return {
    mark,
    clock: (
      <section className="panel">
        <h2>The clock</h2>
        <LastShotClock plan={game.plan} rules={rules} />
      </section>
    ),
  };
}
