import { attemptsOn } from '../../court/cards.ts';
import type { Seat } from '../../store/groupPrices.ts';
import type { GroupWish } from '../../store/groupWish.ts';
import { chanceFigure } from '../games/priceWords.ts';
import { Choice } from '../parts/Choice.tsx';
import { Stepper } from '../parts/Stepper.tsx';
import { YesNo } from '../parts/YesNo.tsx';
import { useNames } from '../useNames.ts';
import { duelSentence, headStartOf, headStartWords, seatGoal } from './groupWords.ts';

interface Props {
  readonly wish: GroupWish;
  readonly seats: readonly Seat[];
  readonly onChange: (change: Partial<GroupWish>) => void;
}

/** Marks that are fair by everybody's own record, or the same for all; and what each comes to. */
export function HowFair({ wish, seats, onChange }: Props) {
  const duel = wish.game.plan.family === 'duel';
  return (
    <section className="panel" aria-label="How hard for whom?">
      {duel ? (
        <HeadStart wish={wish} seats={seats} onChange={onChange} />
      ) : (
        <Choice
          question="How hard for whom?"
          hint="Fair marks ask more of whoever makes more, by their own record. Chances move in steps."
          answers={[
            { value: '0.67', words: 'Two in three for each' },
            { value: '0.5', words: 'Even for each' },
            { value: '0.33', words: 'One in three for each' },
            { value: 'same', words: 'The same for all' },
          ]}
          value={wish.wanted === null ? 'same' : String(wish.wanted)}
          onChoose={(answer) => onChange({ wanted: answer === 'same' ? null : Number(answer) })}
        />
      )}
      <Seats wish={wish} seats={seats} />
      <YesNo
        question="Show the chance while you shoot?"
        value={wish.showChance}
        onChoose={(showChance) => onChange({ showChance })}
      />
    </section>
  );
}

/** Everybody's game, and how likely they win it. */
function Seats({ wish, seats }: Pick<Props, 'wish' | 'seats'>) {
  const nameOf = useNames();
  if (seats.length === 0) return null;
  const duel = duelSentence(seats, nameOf);
  return (
    <div role="status" className="game-outlook">
      <table className="figures seats">
        <thead>
          <tr>
            <th scope="col">Who</th>
            <th scope="col">What</th>
            <th scope="col" className="number">
              Wins in 100
            </th>
          </tr>
        </thead>
        <tbody>
          {seats.map((seat) => (
            <tr key={seat.shooter}>
              <th scope="row">{nameOf(seat.shooter)}</th>
              <td>{seatGoal(seat, seats, wish.game.stops)}</td>
              <td className="number">
                <strong>{chanceFigure(seat.chance)}</strong>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {duel === '' ? null : <p>{duel}</p>}
      <p className="quiet">
        By everybody’s own record, good and bad days counted in. Whoever has none starts from what shooters
        usually make, so that is a guess.
      </p>
    </div>
  );
}

function HeadStart({ wish, seats, onChange }: Props) {
  const nameOf = useNames();
  const [one, other] = wish.shooters;
  const headStart = headStartOf(seats[0]?.plan);
  const most = attemptsOn(wish.game.stops);
  return (
    <>
      <Choice
        question="A head start?"
        hint="A fair one comes as near to an even duel as whole points can, by both records."
        answers={[
          { value: 'fair', words: 'A fair one' },
          { value: 'none', words: 'None' },
          { value: 'own', words: 'We choose it' },
        ]}
        value={wish.headStart !== null ? 'own' : wish.wanted === null ? 'none' : 'fair'}
        onChoose={(answer) =>
          onChange({
            wanted: answer === 'none' ? null : 0.5,
            headStart: answer === 'own' ? headStart : null,
          })
        }
      />
      {wish.headStart === null || one === undefined || other === undefined ? null : (
        <Stepper
          label="Head start"
          value={wish.headStart}
          min={-most}
          max={most}
          write={(value) => headStartWords(value, nameOf(one), nameOf(other))}
          onChange={(points) => onChange({ headStart: points })}
        />
      )}
    </>
  );
}
