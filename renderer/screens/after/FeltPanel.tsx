import type { Round } from '../../log/book.ts';
import { EFFORT_AFTER, NERVES_AFTER, Rating } from '../parts/Rating.tsx';

/** How a round felt to whoever shot it. */
export interface Felt {
  readonly nerves: number | null;
  readonly effort: number | null;
  readonly note: string;
}

/** As it was told before; nothing where nobody told. */
export function feltOf({ nervesAfter, effort, note }: Round): Felt {
  return { nerves: nervesAfter, effort, note };
}

interface Props {
  readonly felt: Felt;
  readonly onTell: (felt: Felt) => void;
}

/** Nerves, effort, and anything to remember. */
export function FeltPanel({ felt, onTell }: Props) {
  const set = (change: Partial<Felt>) => onTell({ ...felt, ...change });
  return (
    <>
      <Rating {...NERVES_AFTER} value={felt.nerves} onRate={(nerves) => set({ nerves })} />
      <Rating {...EFFORT_AFTER} value={felt.effort} onRate={(effort) => set({ effort })} />
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
