import type { Entry, Round } from '../../log/book.ts';
import { useGym } from '../gymContext.ts';

type Dot = 'make' | 'miss' | 'lost' | 'open';
const WORDS: Readonly<Record<Dot, string>> = { make: 'make', miss: 'miss', lost: 'no shot', open: 'to come' };

/** The shots of one stop: a make is a filled disc, a miss an open ring, what is to come a small point. */
export function StopDots({ round, stop }: { readonly round: Round; readonly stop: number }) {
  const pending = useGym((state) => state.pending);
  const dots = dotsOf(round, stop);
  return (
    <ol className="dots" aria-label="Shots at this spot">
      {dots.map(({ dot, entry }, at) => (
        <li key={at} className={`dot ${dot}${entry && pending.has(entry) ? ' pending' : ''}`}>
          <span className="unseen">{WORDS[dot]}</span>
        </li>
      ))}
    </ol>
  );
}

function dotsOf(round: Round, stop: number): { dot: Dot; entry: string | null }[] {
  const taken = round.entries.filter((entry) => entry.stop === stop).flatMap(dotsOfEntry);
  const all = round.stops[stop]?.attempts ?? 0;
  const open = Array.from({ length: Math.max(0, all - taken.length) }, () => ({
    dot: 'open' as const,
    entry: null,
  }));
  return [...taken, ...open];
}

function dotsOfEntry(entry: Entry): { dot: Dot; entry: string }[] {
  switch (entry.kind) {
    case 'shot':
      return [{ dot: entry.made ? 'make' : 'miss', entry: entry.id }];
    case 'expired':
      return [{ dot: 'lost', entry: entry.id }];
    case 'count':
      return Array.from({ length: entry.attempts }, (_, at) => ({
        dot: at < entry.makes ? ('make' as const) : ('miss' as const),
        entry: entry.id,
      }));
  }
}
