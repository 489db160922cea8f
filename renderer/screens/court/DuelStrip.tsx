import type { Seconds } from '../../basics/units.ts';
import type { DuelFace, DuelSide } from '../../games/duelFace.ts';
import type { Round } from '../../log/book.ts';
import { useNames, useOpponentName } from '../useNames.ts';
import { ShotDots, type Dot } from './ShotDots.tsx';
import type { Together } from './useTogether.ts';
import { useReplay, useReplayTimes } from './useReplay.ts';

interface Props extends Together {
  readonly game: DuelFace;
  /** Which side shoots next, with what is on its way to the log. */
  readonly turn: 0 | 1 | null;
}

/** Both sides of a duel, always in the same places; whoever shoots stands out. */
export function DuelStrip({ round, others, game, turn }: Props) {
  const nameOf = useNames();
  const opponent = useOpponentName(game.against);
  const times = useReplayTimes(game.against);
  const [first, second] = game.sides;
  const shooters = [round, ...others].toSorted((a, b) => (a.group?.place ?? 0) - (b.group?.place ?? 0));
  const name = (place: 0 | 1): string => nameOf(shooters[place]?.shooter ?? '');
  const { against } = game;
  return (
    <section className="court-strip duel" aria-label="The duel">
      <Side name={name(0)} side={first} turns={turn === 0} words={tallyWords(first)} />
      {against.kind === 'own round' && times ? (
        <ReplayedSide name={opponent} side={second} round={round} made={against.made} times={times} />
      ) : (
        <Side
          name={against.kind === 'shooter' ? name(1) : opponent}
          side={second}
          turns={turn === 1}
          words={against.kind === 'shooter' ? tallyWords(second) : answerWords(second)}
        />
      )}
    </section>
  );
}

interface ReplayedProps {
  readonly name: string;
  readonly side: DuelSide;
  readonly round: Round;
  readonly made: readonly boolean[];
  readonly times: readonly Seconds[];
}

/** One's own earlier round: what the duel has counted of it, and how far it had come by this second. */
function ReplayedSide({ name, side, round, made, times }: ReplayedProps) {
  const { makes, shots, further } = useReplay(round, made, times, side.shots.length);
  const words = `${answerWords(side)} By this second then: ${makes} of ${shots}.`;
  return <Side name={name} side={side} turns={false} words={words} more={further} />;
}

interface SideProps {
  readonly name: string;
  readonly side: DuelSide;
  readonly turns: boolean;
  /** Shots of an earlier round that had fallen by now, and do not count yet. */
  readonly more?: readonly boolean[];
  readonly words: string;
}

/** As many as fit on a phone. */
const MOST_DOTS = 6;

function Side({ name, side, turns, more, words }: SideProps) {
  const dots: Dot[] = [
    ...side.shots.map((result) => ({ is: result })),
    ...(more ?? []).map((made) => ({ is: made ? ('make' as const) : ('miss' as const), faint: true })),
  ];
  // What has just been counted stays in view, with what runs ahead of it.
  const from = Math.max(0, Math.min(dots.length - MOST_DOTS, side.shots.length - MOST_DOTS / 2));
  return (
    <div className={turns ? 'duel-side on-turn' : 'duel-side'}>
      <p className="duel-name" role="status">
        <span aria-hidden="true">{turns ? '▸ ' : ''}</span>
        {name}
        {turns ? <span className="unseen"> shoots</span> : null}
      </p>
      <p className="duel-score">
        {side.score}
        <span className="unseen"> points</span>
      </p>
      <div className="duel-line">
        <p>{words}</p>
        <ShotDots dots={dots.slice(from, from + MOST_DOTS)} label={`Latest shots: ${name}`} />
      </div>
    </div>
  );
}

function tallyWords({ makes, shots, headStart }: DuelSide): string {
  const tally = `${makes} of ${shots.length}`;
  return headStart === 0 ? tally : `${tally}, and ${headStart} ahead from the start`;
}

/** What an opponent who is not on court did last, and in all: its shot comes after each of one's own. */
function answerWords(side: DuelSide): string {
  const last = side.shots.at(-1);
  if (last === undefined) return `${tallyWords(side)}.`;
  return `${last === 'make' ? 'Make' : 'Miss'}, ${tallyWords(side)}.`;
}
