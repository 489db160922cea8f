import { GlyphIcon } from '../../charts/Glyph.tsx';
import type { RoundId } from '../../basics/ids.ts';
import { verdictOf } from '../../games/played.ts';
import type { Round } from '../../log/book.ts';
import { roundTally } from '../../log/roundCells.ts';
import { dayWords } from '../dayWords.ts';

interface Props {
  readonly rounds: readonly Round[];
  /** Pressured rounds in which no pressure was felt. */
  readonly unfelt: ReadonlySet<RoundId>;
}

/** Rounds one under the other, each with all there is to say about it. */
export function RoundList({ rounds, unfelt }: Props) {
  return (
    <ol className="round-list">
      {rounds.map((round) => (
        <RoundRow key={round.id} round={round} unfelt={unfelt.has(round.id)} />
      ))}
    </ol>
  );
}

function RoundRow({ round, unfelt }: { readonly round: Round; readonly unfelt: boolean }) {
  const { makes, attempts } = roundTally(round);
  const { condition, pair } = round;
  const details = [nervesWords(round), markWords(round), unfelt ? 'no pressure was felt' : ''].filter(
    (words) => words !== '',
  );
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

function markWords(round: Round): string {
  const verdict = verdictOf(round);
  const mark = round.pressure?.mark?.makes ?? 0;
  switch (verdict) {
    case null:
      return endingWords(round);
    case 'open':
      return `mark ${mark}, not played out`;
    case 'beaten':
      return `mark ${mark} beaten`;
    case 'short':
      return `mark ${mark} missed by ${mark - roundTally(round).makes}`;
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
