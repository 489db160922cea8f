import type { ShooterId } from '../../basics/ids.ts';
import type { GroupLine, GroupRefusal } from '../../store/groupLine.ts';
import { fitsGame, type GroupWish } from '../../store/groupWish.ts';
import { listed } from '../parts/listed.ts';
import { Page } from '../parts/Page.tsx';
import { useNames } from '../useNames.ts';
import { groupRefusalWords } from './groupWords.ts';

interface Props {
  readonly refusal: GroupRefusal;
  readonly wish: GroupWish;
  readonly line: GroupLine;
  /** Starts anyway, with the wish as it is changed. */
  readonly onStart: (wish: GroupWish) => void;
  readonly onBack: () => void;
}

/** Why several cannot start as they set it up, and the ways that are open. */
export function NotYet({ refusal, wish, line, onStart, onBack }: Props) {
  const nameOf = useNames();
  const who: readonly ShooterId[] = refusal === 'watched' ? line.sitOut : line.unasked;
  const names = who.map(nameOf);
  const without = wish.shooters.filter((shooter) => !line.sitOut.includes(shooter));
  return (
    <Page title="Not like this today">
      <p className="lead notice warn" role="alert">
        {groupRefusalWords(refusal, names)}
      </p>
      <div className="row">
        {refusal === 'watched' && fitsGame(wish.game, without.length) ? (
          <button
            type="button"
            className="button main"
            onClick={() => onStart({ ...wish, shooters: without })}
          >
            Play without {listed(names)}
          </button>
        ) : null}
        {refusal === 'brake' || refusal === 'age' || refusal === 'money' ? (
          <button type="button" className="button main" onClick={() => onStart({ ...wish, stake: '' })}>
            Play with nothing on the line
          </button>
        ) : null}
        <button type="button" className="button" onClick={onBack}>
          Back
        </button>
      </div>
    </Page>
  );
}
