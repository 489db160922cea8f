import { restOf } from '../../games/gameOn.ts';
import { faceOf } from '../../games/face.ts';
import type { Round } from '../../log/book.ts';
import { standingWords } from '../gameWords.ts';
import { useNames } from '../useNames.ts';
import type { Together } from './useTogether.ts';

/** Whose turn it is, huge, and how everyone stands. */
export function GroupStrip({ round, others }: Together) {
  const nameOf = useNames();
  const all = [round, ...others].toSorted((a, b) => (a.group?.place ?? 0) - (b.group?.place ?? 0));
  return (
    <section className="court-strip group" aria-label="Whose turn it is">
      {/* A new element for every turn, so that its arrival is seen and heard. */}
      <p className="turn-name" key={round.id} role="status">
        {nameOf(round.shooter)}
        <span className="unseen"> shoots</span>
      </p>
      <ol className={all.length > 3 ? 'group-table many' : 'group-table'}>
        {all.map((one) => (
          <li key={one.id} className={one.id === round.id ? 'on-turn' : ''}>
            <span className="group-name">
              <span aria-hidden="true">{one.id === round.id ? '▸ ' : ''}</span>
              {nameOf(one.shooter)}
            </span>{' '}
            {wordsOf(one, [round, ...others])}
          </li>
        ))}
      </ol>
    </section>
  );
}

function wordsOf(one: Round, all: readonly Round[]): string {
  if (one.ending === 'stopped') return 'has gone';
  const face = faceOf(one, restOf(one, all));
  return face ? standingWords(face) : '';
}
