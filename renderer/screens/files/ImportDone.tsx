import type { ShooterId } from '../../basics/ids.ts';
import type { Import } from '../../log/importRounds.ts';
import { writeAddress } from '../../store/places.ts';
import { useDoors, useGym, useShooter } from '../gymContext.ts';

/** What became of a file that was taken. */
export interface Done {
  readonly rounds: number;
  readonly replaced: number;
  /** Whose rounds they are, in the order of the file. */
  readonly whose: readonly ShooterId[];
}

export function doneOf({ facts, rounds, replaced }: Import): Done {
  const whose = facts.flatMap((fact) => (fact.type === 'RoundImported' ? [fact.body.shooter] : []));
  return { rounds, replaced, whose: [...new Set(whose)] };
}

/** With more of them, the list of shooters is the shorter way. */
const MOST_WAYS = 4;
const NAMES = new Intl.ListFormat('en-GB', { type: 'conjunction' });

/** Says what was brought in and in whose results it counts, and leads there. */
export function ImportDone({ done }: { readonly done: Done }) {
  const { gym } = useDoors();
  const shooters = useGym((state) => state.book.shooters);
  const here = useShooter();
  const whose = done.whose.flatMap((id) => shooters.get(id) ?? []);
  const mine = whose.length === 1 && whose[0]?.id === here?.id;
  const stays =
    here !== null && whose.every(({ id }) => id !== here.id) ? ` ${here.name} stays at the bench.` : '';
  return (
    <>
      <p>
        {countWords(done)}. They count in{' '}
        {mine ? 'your results' : `the results of ${NAMES.format(whose.map(({ name }) => name))}`} from now on.
        {stays}
      </p>
      <div className="row">
        {whose.length > MOST_WAYS ? (
          <a className="button" href={writeAddress('shooter')}>
            To the shooters
          </a>
        ) : (
          whose.map(({ id, name }) => (
            <a
              key={id}
              className="button"
              href={writeAddress('result')}
              onClick={() => gym.set({ shooter: id })}
            >
              {mine ? 'See the result' : `To ${name}’s result`}
            </a>
          ))
        )}
      </div>
    </>
  );
}

function countWords({ rounds, replaced }: Done): string {
  const parts = [
    ...(rounds > 0 ? [`${count(rounds)} brought in`] : []),
    ...(replaced > 0 ? [`${count(replaced)} corrected`] : []),
  ];
  return parts.join(', ');
}

function count(rounds: number): string {
  return rounds === 1 ? '1 round' : `${rounds} rounds`;
}
