import { RUNGS, type Rung } from '../../pressure/ladder.ts';
import { RUNG_WORDS } from './lineWords.ts';

interface Props {
  /** The rung of the latest session; null before the first. */
  readonly standing: Rung | null;
  readonly suggested: Rung;
  /** The rung of the round as it is set up. */
  readonly round: Rung;
}

/** The rungs, highest on top, each with what stands on it. */
export function Ladder({ standing, suggested, round }: Props) {
  return (
    <ol className="ladder" reversed>
      {RUNGS.toReversed().map((rung) => {
        const marks = [
          ...(rung === round ? ['this round'] : []),
          ...(rung === standing ? ['last time'] : []),
          ...(rung === suggested ? ['suggested'] : []),
        ];
        return (
          <li key={rung} className={rung === round ? 'rung chosen' : 'rung'}>
            <span>{RUNG_WORDS[rung]}</span>
            {marks.length === 0 ? null : <strong>{marks.join(', ')}</strong>}
          </li>
        );
      })}
    </ol>
  );
}
