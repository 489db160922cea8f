import { faceOf } from '../../games/face.ts';
import { standings } from '../../games/group.ts';
import type { Round } from '../../log/book.ts';
import { useNames } from '../useNames.ts';
import { GAME_VERDICTS, outcomeWords } from '../gameWords.ts';
import { verdictOf } from '../../games/played.ts';

/** How everyone of a group came out, the best first. */
export function Standings({ rounds }: { readonly rounds: readonly Round[] }) {
  const nameOf = useNames();
  return (
    <ol className="standings">
      {standings(rounds).map(({ round, makes, attempts, won }) => {
        const others = rounds.filter(({ id }) => id !== round.id);
        const face = faceOf(round, others);
        const verdict = verdictOf(round, others);
        return (
          <li key={round.id} className={won ? 'winner' : ''}>
            <p className="lead">
              {nameOf(round.shooter)}
              {verdict ? <span className="quiet"> {GAME_VERDICTS[verdict]}</span> : null}
              <span className="standings-outcome quiet">{face ? outcomeWords(face) : ''}</span>
            </p>
            <p className="figure">
              {makes} of {attempts}
            </p>
          </li>
        );
      })}
    </ol>
  );
}
