import { useStore } from 'zustand';

import { faceOf } from '../../games/face.ts';
import { needOf } from '../../games/played.ts';
import type { Round } from '../../log/book.ts';
import { roundTally } from '../../log/roundCells.ts';
import type { Outlook } from '../../store/courtGames.ts';
import { inHundred } from '../../store/forecast.ts';
import { useDoors } from '../gymContext.ts';
import { ClockFigure } from './ClockFigure.tsx';
import { faceView, type BigFigure } from './faceView.ts';
import { useNames } from '../useNames.ts';
import { useSaved, type Together } from './useTogether.ts';

/** How the round stands: what is needed, the clock, the chance. Counts only what the log has acknowledged. */
export function GoingOn({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  const saved = useSaved(round);
  const clock = useStore(court.store, (state) => state.clock);
  const figures = figuresOf(saved);
  const { mark = null, game = null, showChance = false } = saved.round.pressure ?? {};
  return (
    <dl className={figures.length > 2 ? 'going-on many' : 'going-on'}>
      {figures.map((figure, at) => (
        <Figure key={at} {...figure} />
      ))}
      {clock ? <ClockFigure clock={clock} round={saved.round} /> : null}
      {(mark || game) && showChance ? <Chance {...saved} /> : null}
    </dl>
  );
}

function figuresOf({ round, others }: Together): readonly BigFigure[] {
  const face = faceOf(round, others);
  if (face) return faceView(face).figures;
  const { makes, attempts } = roundTally(round);
  if (!round.pressure?.mark) return [{ value: String(makes), words: `made of ${attempts}` }];
  const { needed, left } = needOf(round);
  return [{ value: String(needed), words: needed === 0 ? 'Mark reached' : `needed of ${left} left` }];
}

/** Nearer than this to nothing or to one, it is decided. */
const DECIDED = 1e-9;
/** A shot on which so much hangs is a big one. Our own choice. */
const BIG_SHOT = 0.25;

function Chance({ round, others }: Together) {
  const { court } = useDoors();
  const phase = useStore(court.store, (state) => state.phase);
  const nameOf = useNames();
  const outlook = court.outlook(round, others);
  if (!outlook) return null;
  const { chance, leverage } = outlook;
  if (chance > 1 - DECIDED) return <Figure words="you have won" value="–" />;
  if (chance < DECIDED) return <Figure words="out of reach now" value="–" />;
  if (phase === 'buzzer' && round.pressure?.clock?.kind === 'round') {
    return <Figure words="time is up" value="–" />;
  }
  return (
    <Figure
      words={chanceWords(outlook, round.group ? nameOf(round.shooter) : null)}
      value={String(inHundred(chance))}
      note={`this shot moves it by ${inHundred(leverage)}`}
      big={leverage >= BIG_SHOT}
    />
  );
}

function chanceWords({ time }: Outlook, name: string | null): string {
  const who = name === null ? 'wins' : `${name} wins`;
  switch (time) {
    case 'no clock':
      return `${who} in 100`;
    case 'own pace':
      return `${who} in 100 at ${name === null ? 'your' : 'their'} pace`;
    case 'usual pace':
      return `${who} in 100 at a usual pace`;
    case 'aside':
      return `${who} in 100, time aside`;
  }
}

interface FigureProps extends BigFigure {
  readonly note?: string;
  /** A figure that stands out. */
  readonly big?: boolean;
}

function Figure({ words, value, discs, note, big = false }: FigureProps) {
  return (
    <div className={big ? 'going-on-figure big-shot' : 'going-on-figure'}>
      <dt>{words}</dt>
      <dd>{value}</dd>
      {discs ? (
        <dd className="discs" aria-hidden="true">
          {Array.from({ length: discs.of }, (_, at) => (
            <span key={at} className={at < discs.filled ? 'dot make' : 'dot miss'} />
          ))}
        </dd>
      ) : null}
      {note === undefined ? null : <dd className="figure-note">{note}</dd>}
    </div>
  );
}
