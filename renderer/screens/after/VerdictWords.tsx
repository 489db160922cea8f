import { useMemo } from 'react';

import { restOf } from '../../games/gameOn.ts';
import { debtOf } from '../../games/ledger.ts';
import { faceOf } from '../../games/face.ts';
import { verdictOf, type Verdict } from '../../games/played.ts';
import type { Round } from '../../log/book.ts';
import { inHundred } from '../../store/forecast.ts';
import { useGym } from '../gymContext.ts';
import { listed } from '../parts/listed.ts';
import { useNames } from '../useNames.ts';
import { goalWords, outcomeWords } from '../gameWords.ts';
import { owedWords } from '../stakes/debtWords.ts';

interface Props {
  readonly round: Round;
  readonly others: readonly Round[];
  readonly verdict: Verdict | null;
}

/** What the verdict rests on, and what follows from it. */
export function VerdictWords({ round, others, verdict }: Props) {
  const { mark = null, game = null } = round.pressure ?? {};
  const face = faceOf(round, others);
  const what = game ? 'game' : 'mark';
  return (
    <>
      {mark ? (
        <p className="lead">
          The mark was {mark.makes}. Before the round your record said about {inHundred(mark.chance)} times in
          100, with time enough.
        </p>
      ) : null}
      {game && face ? (
        <>
          {round.group ? null : (
            <>
              <p className="lead">{`${round.game}: ${outcomeWords(face)}`}.</p>
              <p className="quiet">
                {goalWords(game.plan, round.stops)}.
                {game.chance === null
                  ? ''
                  : ` Before the first shot your record said about ${inHundred(game.chance)} times in 100.`}
              </p>
            </>
          )}
        </>
      ) : null}
      {round.ending === 'time-up' ? (
        <p>The clock ran out before the {game ? 'game was over' : 'card did'}.</p>
      ) : null}
      {verdict === 'void' ? (
        <p>
          The device took the sound or the clock away in the middle. Your shots are kept; the {what} and the
          stake are off.
        </p>
      ) : null}
      {verdict === 'stopped' ? (
        <p>
          {game
            ? 'The shots count, the game does not, and the stake is off.'
            : 'Your shots are kept. The mark and the stake do not count.'}
        </p>
      ) : null}
      <StakeWords round={round} others={others} verdict={verdict} />
    </>
  );
}

/** Who owes whom; of several shooters whoever lost is named. */
function StakeWords({ round, others, verdict }: Props) {
  const nameOf = useNames();
  const stake = round.pressure?.stake ?? null;
  if (stake === null) return null;
  const settle = 'It stands under Stakes until it is settled.';
  if (round.group === null) return <OwnStakeWords round={round} verdict={verdict} />;
  const all = [round, ...others];
  const lost = all.filter((one) => verdictOf(one, restOf(one, all)) === 'short');
  if (lost.length === 0) return null;
  return (
    <p>
      {listed(lost.map(({ shooter }) => nameOf(shooter)))} {lost.length === 1 ? 'owes' : 'owe'}: {stake}.{' '}
      {settle}
    </p>
  );
}

/** What the ledger makes of a round shot alone, for double or nothing too. */
function OwnStakeWords({ round, verdict }: Pick<Props, 'round' | 'verdict'>) {
  const book = useGym((state) => state.book);
  const debt = useMemo(() => debtOf(book, round), [book, round]);
  if (verdict === 'stopped' || verdict === 'void') {
    return round.pressure?.doubles ? <p>The debt it was shot for stays as it was.</p> : null;
  }
  if (!debt) return null;
  if (debt.owes === 'nobody') return <p>Double or nothing: {debt.stake} is off. Nothing is owed any more.</p>;
  return (
    <p>
      {debt.owes === 'others' ? 'Owed to you' : 'You owe'}: {owedWords(debt)}. It stands under Stakes until it
      is settled.
    </p>
  );
}
