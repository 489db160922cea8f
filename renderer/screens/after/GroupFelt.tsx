import { useState } from 'react';

import type { RoundId } from '../../basics/ids.ts';
import type { Round } from '../../log/book.ts';
import { useNames } from '../useNames.ts';
import { Choice } from '../parts/Choice.tsx';
import { FeltPanel, feltOf, type Felt } from './FeltPanel.tsx';

interface Props {
  readonly rounds: readonly Round[];
  readonly felt: ReadonlyMap<RoundId, Felt>;
  readonly onTell: (round: RoundId, felt: Felt) => void;
}

/** Of several shooters, whoever wants says how it felt, one after the other, or nobody. */
export function GroupFelt({ rounds, felt, onTell }: Props) {
  const nameOf = useNames();
  const [who, setWho] = useState<RoundId | null>(null);
  const round = rounds.find(({ id }) => id === who);
  return (
    <>
      <Choice
        question="Who wants to say how it felt?"
        hint="Each for themselves, one after the other. Nobody has to."
        answers={rounds.map(({ id, shooter }) => ({
          value: id,
          words: felt.has(id) ? `${nameOf(shooter)} ✓` : nameOf(shooter),
        }))}
        value={who}
        onChoose={setWho}
      />
      {round ? (
        <FeltPanel
          key={round.id}
          pressured={round.condition === 'pressured'}
          felt={felt.get(round.id) ?? feltOf(round)}
          onTell={(told) => onTell(round.id, told)}
        />
      ) : null}
    </>
  );
}
