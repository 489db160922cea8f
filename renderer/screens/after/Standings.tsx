import { restOf } from '../../games/gameOn.ts';
import { faceOf } from '../../games/face.ts';
import { standings, type GroupStanding } from '../../games/group.ts';
import type { Round } from '../../log/book.ts';
import { inHundred } from '../../store/forecast.ts';
import { hasMinor } from '../../store/line.ts';
import { useGym } from '../gymContext.ts';
import { useNames } from '../useNames.ts';
import { GAME_VERDICTS, outcomeWords } from '../gameWords.ts';
import { verdictOf } from '../../games/played.ts';

/** How everyone of a group came out, the best first; with someone under 18 among them, in the order of shooting. */
export function Standings({ rounds }: { readonly rounds: readonly Round[] }) {
  const nameOf = useNames();
  const young = useGym(({ book }) =>
    hasMinor(
      book,
      rounds.map(({ shooter }) => shooter),
    ),
  );
  const shown = young ? standings(rounds).toSorted(byPlace) : standings(rounds);
  // With marks of their own everybody played another game.
  const [first, ...rest] = rounds;
  const same = rest.every(({ game }) => game === first?.game);
  return (
    <>
      {same ? <p className="lead">{first?.game}</p> : null}
      <ol className="standings">
        {shown.map(({ round, makes, attempts, won }) => {
          const others = restOf(round, rounds);
          const face = faceOf(round, others);
          const verdict = verdictOf(round, others);
          return (
            <li key={round.id} className={won ? 'winner' : ''}>
              <p className="lead">
                {nameOf(round.shooter)}
                {verdict ? <span className="quiet"> {GAME_VERDICTS[verdict]}</span> : null}
                <span className="standings-outcome quiet">
                  {[...(same ? [] : [round.game]), ...(face ? [outcomeWords(face)] : [])].join(': ')}
                </span>
                <span className="standings-outcome quiet">{forecastBeforeWords(round)}</span>
              </p>
              <p className="figure">
                {makes} of {attempts}
              </p>
            </li>
          );
        })}
      </ol>
    </>
  );
}

/** What was told before the first shot. */
function forecastBeforeWords({ pressure }: Round): string {
  const chance = pressure?.game?.chance ?? null;
  return chance === null ? '' : `Before the first shot: about ${inHundred(chance)} in 100`;
}

function byPlace(one: GroupStanding, other: GroupStanding): number {
  return (one.round.group?.place ?? 0) - (other.round.group?.place ?? 0);
}
