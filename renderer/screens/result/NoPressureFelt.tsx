import { EMPTY_BOOK, type Book } from '../../log/book.ts';
import type { Figures } from '../../store/figures.ts';
import type { Study } from '../../store/study.ts';
import { RoundList } from '../parts/RoundList.tsx';
import { indexToTell } from '../studyParts.ts';
import { DropsSideBySide } from './DropsSideBySide.tsx';

interface Props {
  readonly figures: Pick<Figures, 'felt' | 'unfelt' | 'rounds'>;
  readonly study: Study | null;
  /** Where the others of a game played together are found. */
  readonly book?: Book;
}

/** So many rounds are listed; after years of them a page with all would hold up the tablet. */
const LATEST = 30;

/** Did pressure arrive? The rounds in which nerves did not rise, shown apart. */
export function NoPressureFelt({ figures, study, book = EMPTY_BOOK }: Props) {
  const { felt, unfelt, rounds } = figures;
  const rated = felt.felt.rounds.length + felt.unfelt.rounds.length;
  const unrated = felt.unrated.rounds.length;
  if (rated + unrated === 0) return null;
  return (
    <section className="panel" aria-label="Did pressure arrive?">
      <h2>Did pressure arrive?</h2>
      <p className="lead">{arrivalWords(felt, rated)}</p>
      {felt.unfelt.rounds.length === 0 ? null : (
        <>
          <p>
            In those rounds you made {tallyWords(felt.unfelt)}, in the ones where nerves rose{' '}
            {tallyWords(felt.felt)}.
          </p>
          <Without study={study} />
          <p>
            They stay in the main number. Nerves are asked after the decision to shoot under pressure; leaving
            rounds out by them would pick the rounds by how you felt, and the comparison would no longer be
            fair.
          </p>
          <details className="behind">
            <summary>
              {unfelt.size === 1
                ? 'The round without pressure'
                : `The ${unfelt.size} rounds without pressure`}
            </summary>
            <RoundList
              rounds={rounds.filter(({ id }) => unfelt.has(id)).slice(0, LATEST)}
              unfelt={unfelt}
              book={book}
            />
            {unfelt.size > LATEST ? (
              <p className="quiet">
                These are the latest {LATEST}. The list of all rounds says it of the others too.
              </p>
            ) : null}
          </details>
        </>
      )}
      {unrated > 0 && felt.line !== null ? (
        <p className="quiet">
          {unrated === 1 ? 'One pressured round has' : `${unrated} pressured rounds have`} no rating of
          nerves, and {unrated === 1 ? 'is' : 'are'} in neither heap.
        </p>
      ) : null}
    </section>
  );
}

function Without({ study }: { readonly study: Study | null }) {
  const index = indexToTell(study);
  const without = study?.felt.dropWithout;
  if (!index || !without) return null;
  return (
    <DropsSideBySide
      label="The drop with and without these rounds"
      behind="With and without these rounds, in numbers"
      rows={[
        { name: 'All pressured rounds', ...index.overall },
        { name: 'Without these', ...without },
      ]}
    />
  );
}

function arrivalWords({ line, unfelt }: Figures['felt'], rated: number): string {
  if (line === null) {
    return 'Rate your nerves before at least three relaxed rounds; then this page can tell in which pressured rounds no pressure was felt.';
  }
  if (rated === 0) return 'Rate your nerves before pressured rounds too; then this page can tell.';
  const usual = `your usual relaxed ${line.before} of 10`;
  const none = unfelt.rounds.length;
  if (none === 0) {
    return rated === 1
      ? `Your nerves rose above ${usual} in the one pressured round.`
      : `Your nerves rose above ${usual} in all ${rated} pressured rounds.`;
  }
  return `In ${none} of ${rated} pressured rounds your nerves did not rise above ${usual}, before the round or in it: no pressure was felt.`;
}

function tallyWords({ makes, attempts }: Figures['felt']['felt']): string {
  return attempts === 0 ? 'none' : `${makes} of ${attempts}`;
}
