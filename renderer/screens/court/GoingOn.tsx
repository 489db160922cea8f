import { useStore } from 'zustand';

import { needOf } from '../../games/played.ts';
import type { Round } from '../../log/book.ts';
import { roundTally } from '../../log/roundCells.ts';
import { inHundred } from '../../store/forecast.ts';
import { standingOf } from '../../store/gameChances.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { ClockFigure } from './ClockFigure.tsx';

/** How the round stands: what is needed, the clock, the chance. Counts only what the log has acknowledged. */
export function GoingOn({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  const saved = useGym(({ book }) => (book.open?.id === round.id ? book.open : null)) ?? round;
  const clock = useStore(court.store, (state) => state.clock);
  const { makes, attempts } = roundTally(saved);
  const mark = saved.pressure?.mark ?? null;
  const { needed, left } = needOf(saved);
  return (
    <dl className="going-on">
      {mark ? (
        <Figure words={needed === 0 ? 'Mark reached' : `needed of ${left} left`} value={String(needed)} />
      ) : (
        <Figure words={`made of ${attempts}`} value={String(makes)} />
      )}
      {clock && saved.pressure?.clock ? <ClockFigure clock={clock} kind={saved.pressure.clock.kind} /> : null}
      {mark && saved.pressure?.showChance ? <Chance round={saved} /> : null}
    </dl>
  );
}

function Chance({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  const phase = useStore(court.store, (state) => state.phase);
  const game = court.game(round);
  if (!game) return null;
  const { needed, left } = needOf(round);
  if (needed === 0 || needed > left || phase === 'buzzer')
    return (
      <Figure
        words={needed === 0 ? 'you have won' : needed > left ? 'out of reach now' : 'time is up'}
        value="–"
      />
    );
  return <Figure words="wins in 100, time aside" value={String(inHundred(standingOf(game, round).chance))} />;
}

export function Figure({ words, value }: { readonly words: string; readonly value: string }) {
  return (
    <div className="going-on-figure">
      <dt>{words}</dt>
      <dd>{value}</dd>
    </div>
  );
}
