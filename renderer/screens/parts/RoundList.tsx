import { GlyphIcon } from '../../charts/Glyph.tsx';
import type { RoundId } from '../../basics/ids.ts';
import { faceOf } from '../../games/face.ts';
import { othersIn } from '../../games/gameOn.ts';
import { verdictOf, type Verdict } from '../../games/played.ts';
import { EMPTY_BOOK, type Book, type Round } from '../../log/book.ts';
import { roundTally } from '../../log/roundCells.ts';
import { dayWords } from '../dayWords.ts';
import { listed } from './listed.ts';
import { GAME_VERDICTS, outcomeWords } from '../gameWords.ts';

interface Props {
  readonly rounds: readonly Round[];
  /** Pressured rounds in which no pressure was felt. */
  readonly unfelt: ReadonlySet<RoundId>;
  /** Where the others of a game played together are found. */
  readonly book?: Book;
}

/** Rounds one under the other, each with all there is to say about it. */
export function RoundList({ rounds, unfelt, book = EMPTY_BOOK }: Props) {
  return (
    <ol className="round-list">
      {rounds.map((round) => (
        <RoundRow key={round.id} round={round} book={book} unfelt={unfelt.has(round.id)} />
      ))}
    </ol>
  );
}

interface RowProps {
  readonly round: Round;
  readonly book: Book;
  readonly unfelt: boolean;
}

function RoundRow({ round, book, unfelt }: RowProps) {
  const others = othersIn(book, round);
  const { makes, attempts } = roundTally(round);
  const { condition, pair } = round;
  const withWords =
    others.length === 0
      ? ''
      : `with ${listed(others.map(({ shooter }) => book.shooters.get(shooter)?.name ?? 'someone'))}`;
  const details = [
    nervesWords(round),
    verdictWords(round, others),
    withWords,
    unfelt ? 'no pressure was felt' : '',
  ].filter((words) => words !== '');
  return (
    <li className="round-row">
      <div>
        {dayWords(round.date)}
        <span className="quiet"> · round {round.label}</span>
        <p className="round-condition">
          <GlyphIcon kind={condition} /> {condition}
          {pair ? <span className="quiet"> · {pair.place === 1 ? 'first' : 'second'} of a pair</span> : null}
        </p>
      </div>
      <div>
        {round.game === '' ? 'Own card' : round.game}
        <p className="quiet">{details.join(' · ')}</p>
        {round.note === '' ? null : <q>{round.note}</q>}
      </div>
      <p className="figure">
        {makes} of {attempts}
      </p>
    </li>
  );
}

function nervesWords({ nerves, nervesAfter }: Round): string {
  if (nerves === null) return nervesAfter === null ? '' : `nerves ${nervesAfter} during`;
  return nervesAfter === null ? `nerves ${nerves}` : `nerves ${nerves} before, ${nervesAfter} during`;
}

function verdictWords(round: Round, others: readonly Round[]): string {
  const verdict = verdictOf(round, others);
  const face = faceOf(round, others);
  if (verdict === null) return endingWords(round);
  return face ? `${GAME_VERDICTS[verdict]}: ${outcomeWords(face)}` : markWords(round, verdict);
}

function markWords(round: Round, verdict: Verdict): string {
  const mark = round.pressure?.mark?.makes ?? 0;
  switch (verdict) {
    case 'open':
      return `mark ${mark}, not played out`;
    case 'beaten':
      return `mark ${mark} beaten`;
    case 'short':
      return `mark ${mark} missed by ${mark - roundTally(round).makes}`;
    case 'level':
    case 'stopped':
    case 'void':
      return `mark ${mark} off: ${endingWords(round)}`;
  }
}

function endingWords({ state, ending }: Round): string {
  if (state !== 'ended') return 'not played out';
  switch (ending) {
    case 'stopped':
      return 'ended early';
    case 'interrupted':
      return 'interrupted';
    case 'time-up':
      return 'time ran out';
    case 'played-out':
    case null:
      return '';
  }
}
