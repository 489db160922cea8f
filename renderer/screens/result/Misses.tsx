import { MISS_SIDES } from '../../log/events.ts';
import type { Round } from '../../log/book.ts';
import { missFigures, type MissCounts } from '../../store/missFigures.ts';
import { MISS_SIDE_WORDS } from '../parts/missSideWords.ts';
import { Fold } from './Fold.tsx';

/** Where the misses went, for a shooter who notes it. */
export function Misses({ rounds }: { readonly rounds: readonly Round[] }) {
  const misses = missFigures(rounds);
  if (!misses) return null;
  return (
    <Fold title="Where the misses went">
      <div className="scroll" role="region" aria-label="Misses by side" tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">Rounds</th>
              {MISS_SIDES.map((side) => (
                <th key={side} scope="col" className="number">
                  {MISS_SIDE_WORDS[side]}
                </th>
              ))}
              <th scope="col" className="number">
                In all
              </th>
            </tr>
          </thead>
          <tbody>
            <MissRow words="Relaxed" counts={misses.relaxed} />
            <MissRow words="Pressured" counts={misses.pressured} />
          </tbody>
        </table>
      </div>
      <p className="quiet">
        Only misses whose side was tapped. A few misses more on one side are luck more often than not.
      </p>
    </Fold>
  );
}

function MissRow({ words, counts }: { readonly words: string; readonly counts: MissCounts }) {
  return (
    <tr>
      <th scope="row">{words}</th>
      {MISS_SIDES.map((side) => (
        <td key={side} className="number">
          {counts[side]}
        </td>
      ))}
      <td className="number">{MISS_SIDES.reduce((sum, side) => sum + counts[side], 0)}</td>
    </tr>
  );
}
