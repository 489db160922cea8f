import type { Card, Stop } from '../../court/cards.ts';
import type { Shooter } from '../../log/book.ts';
import { cardsOf } from '../../store/roundActions.ts';
import { StopForm } from '../cards/StopForm.tsx';
import { StopList } from '../cards/StopList.tsx';
import { useGym } from '../gymContext.ts';
import { Choice } from '../parts/Choice.tsx';

interface Props {
  readonly shooter: Shooter;
  readonly stops: readonly Stop[];
  /** The stops are put together here, even where a card has the same ones. */
  readonly byHand: boolean;
  readonly onChange: (stops: readonly Stop[], byHand: boolean) => void;
}

const BY_HAND = 'by-hand';

/** What a game is shot on: a card, or stops chosen here. */
export function ShotsForm({ shooter, stops, byHand, onChange }: Props) {
  const cards = useGym(({ book }) => book.cards);
  const all = cardsOf({ cards });
  const card = byHand ? undefined : all.find((one) => sameStops(one, stops));
  return (
    <>
      <Choice
        question="Which shots?"
        answers={[
          ...all.map(({ id, name }) => ({ value: id as string, words: name })),
          { value: BY_HAND, words: 'Stops of its own' },
        ]}
        value={card?.id ?? BY_HAND}
        onChoose={(id) => {
          const chosen = all.find((one) => one.id === id);
          onChange(chosen?.stops ?? stops, chosen === undefined);
        }}
      />
      {card ? null : (
        <>
          <StopList stops={stops} onChange={(next) => onChange(next, true)} />
          <details className="by-name" open={stops.length === 0}>
            <summary>Add a stop</summary>
            <StopForm shooter={shooter} onAdd={(stop) => onChange([...stops, stop], true)} />
          </details>
        </>
      )}
    </>
  );
}

function sameStops(card: Card, stops: readonly Stop[]): boolean {
  return (
    card.stops.length === stops.length &&
    card.stops.every(({ spot, shot, attempts }, at) => {
      const other = stops[at];
      return other?.spot === spot && other.shot === shot && other.attempts === attempts;
    })
  );
}
