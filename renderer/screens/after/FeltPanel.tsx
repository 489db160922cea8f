import type { RoundId } from '../../basics/ids.ts';
import type { Round } from '../../log/book.ts';
import type { Fact } from '../../log/facts.ts';
import { Choice } from '../parts/Choice.tsx';
import { EFFORT_AFTER, NERVES_AFTER, Rating } from '../parts/Rating.tsx';

const TOO_MUCH = [
  { value: 'yes', words: 'Yes' },
  { value: 'no', words: 'No' },
] as const;

/** How a round felt to whoever shot it. */
export interface Felt {
  readonly nerves: number | null;
  readonly effort: number | null;
  readonly note: string;
  /** Whether the pressure was too much; null where nobody said. */
  readonly tooMuch: boolean | null;
}

/** As it was told before; nothing where nobody told. */
export function feltOf({ nervesAfter, effort, note, tooMuch }: Round): Felt {
  return { nerves: nervesAfter, effort, note, tooMuch: tooMuch ?? null };
}

/** The rating as it is logged. */
export function ratedFact(round: RoundId, { nerves, effort, note, tooMuch }: Felt): Fact {
  const rated = { round, nerves, effort, note: note.trim() };
  return { type: 'AfterRated', body: tooMuch === null ? rated : { ...rated, tooMuch } };
}

interface Props {
  readonly pressured: boolean;
  readonly felt: Felt;
  readonly onTell: (felt: Felt) => void;
}

/** Nerves, effort, and anything to remember. */
export function FeltPanel({ pressured, felt, onTell }: Props) {
  const set = (change: Partial<Felt>) => onTell({ ...felt, ...change });
  return (
    <>
      <Rating {...NERVES_AFTER} value={felt.nerves} onRate={(nerves) => set({ nerves })} />
      <Rating {...EFFORT_AFTER} value={felt.effort} onRate={(effort) => set({ effort })} />
      {pressured ? (
        <Choice
          question="Was the pressure too much today?"
          hint="Yes makes the app suggest one step down next time. It needs no reason."
          answers={TOO_MUCH}
          value={felt.tooMuch === null ? null : felt.tooMuch ? 'yes' : 'no'}
          onChoose={(answer) => set({ tooMuch: answer === 'yes' })}
        />
      ) : null}
      <label className="field">
        Anything to remember?
        <textarea
          rows={2}
          maxLength={500}
          value={felt.note}
          onChange={(change) => set({ note: change.target.value })}
        />
      </label>
    </>
  );
}
