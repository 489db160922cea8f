import { useGym } from '../gymContext.ts';

/** What became of one shot. */
export interface Dot {
  readonly is: 'make' | 'miss' | 'lost' | 'open';
  /** The entry of the log, to be drawn paler while it is on its way there. */
  readonly entry?: string | null;
  /** Does not count yet. */
  readonly faint?: boolean;
}

const WORDS: Readonly<Record<Dot['is'], string>> = {
  make: 'make',
  miss: 'miss',
  lost: 'no shot',
  open: 'to come',
};

/** Shots in a row: a make is a filled disc, a miss an open ring, what is to come a small point. */
export function ShotDots({ dots, label }: { readonly dots: readonly Dot[]; readonly label: string }) {
  const pending = useGym((state) => state.pending);
  return (
    <ol className="dots" aria-label={label}>
      {dots.map(({ is, entry, faint }, at) => (
        <li
          key={at}
          className={['dot', is, entry && pending.has(entry) ? 'pending' : '', faint ? 'faint' : ''].join(
            ' ',
          )}
        >
          <span className="unseen">{WORDS[is]}</span>
        </li>
      ))}
    </ol>
  );
}
