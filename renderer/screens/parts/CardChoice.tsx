import { attemptsOn, type Card } from '../../court/cards.ts';
import type { EntryWay } from '../../log/events.ts';
import { Choice } from './Choice.tsx';

interface CardProps {
  readonly cards: readonly Card[];
  readonly value: Card;
  readonly onChoose: (card: Card) => void;
}

/** Which card to shoot. */
export function CardChoice({ cards, value, onChoose }: CardProps) {
  const answers = cards.map((card) => ({
    value: card.id as string,
    words: card.name.match(/\d/) ? card.name : `${card.name} (${attemptsOn(card.stops)} shots)`,
  }));
  return (
    <Choice
      question="Which card?"
      hint="The same card relaxed and pressured is what makes the two comparable."
      answers={answers}
      value={value.id}
      onChoose={(id) => onChoose(cards.find((card) => card.id === id) ?? value)}
    />
  );
}

const WAYS: readonly { value: EntryWay; words: string }[] = [
  { value: 'each-shot', words: 'Tap every shot' },
  { value: 'counts', words: 'A count for each spot' },
];

/** How the shots are put in. */
export function EntryChoice({
  value,
  onChoose,
}: {
  readonly value: EntryWay;
  readonly onChoose: (way: EntryWay) => void;
}) {
  return (
    <Choice
      question="How do you keep count?"
      hint="Alone? Shoot the spot out, then tap how many went in."
      answers={WAYS}
      value={value}
      onChoose={onChoose}
    />
  );
}
