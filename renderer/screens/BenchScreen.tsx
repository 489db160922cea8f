import { faceOf } from '../games/face.ts';
import { othersIn } from '../games/gameOn.ts';
import { debtsOf } from '../games/ledger.ts';
import type { Round, Shooter } from '../log/book.ts';
import { turnsOf } from '../log/roundCells.ts';
import { shooterFigures } from '../store/figures.ts';
import { writeAddress, type Place } from '../store/places.ts';
import { unfinishedPair } from '../store/roundActions.ts';
import { removeDemoSeason } from '../store/shooterActions.ts';
import { todayAt } from '../store/today.ts';
import { readyGames } from './gamesLater.ts';
import { useDoors, useGym, useStudy } from './gymContext.ts';
import { Page } from './parts/Page.tsx';
import { listed } from './parts/listed.ts';
import { DropSentence } from './parts/DropSentence.tsx';
import { useIdle } from './parts/useIdle.ts';
import { WorkingBar } from './parts/WorkingBar.tsx';
import { useNames } from './useNames.ts';

/** The bench: how things stand in one sentence, and what to do next. */
export function BenchScreen({ shooter }: { readonly shooter: Shooter }) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const pair = unfinishedPair(book, shooter.id, todayAt(gym));
  const owed = debtsOf(book, shooter.id).filter((debt) => !debt.settled).length;
  const figures = shooterFigures(book, shooter.id);
  const study = useStudy((state) => state.study);
  const broken = useStudy((state) => state.broken);
  useIdle(() => void readyGames(gym, shooter.id), `${shooter.id} ${book.rounds.size}`);
  return (
    <Page
      title={shooter.name}
      first
      aside={
        <nav className="row" aria-label="Shooter and sound">
          <a className="button" href={writeAddress('shooter')}>
            Shooters
          </a>
          <a className="button" href={writeAddress('sound')}>
            Sound and light
          </a>
        </nav>
      }
    >
      <OpenRound />
      {pair ? (
        <div className="notice">
          <p className="lead">Your pair is half played.</p>
          <a className="button main" href={writeAddress('pair', pair.pair.id)}>
            On to round {pair.next} of 2
          </a>
        </div>
      ) : null}
      <div className="bench">
        <section className="panel bench-words" aria-label="How you stand">
          <DropSentence figures={figures} study={study} broken={broken} />
          {figures.relaxed.attempts + figures.pressured.attempts === 0 ? null : (
            <a className="button" href={writeAddress('result')}>
              See the whole result
            </a>
          )}
          <WorkingBar />
        </section>
        <nav className="bench-rounds" aria-label="Start a round">
          <Slab place="relaxed" name="Relaxed round" words="An honest record of what you make" />
          <Slab place="pressured" name="Pressured round" words="Same shots, with something on the line" />
          <Slab place="games" name="Games" words="Ten in a row, down one, a race: each with your chance" />
          <Slab place="together" name="Play together" words="Two to eight of you, in turn, on this device" />
          <Slab place="pair" name="A pair" words="One of each; a coin decides the order" main />
        </nav>
      </div>
      <nav className="row" aria-label="More">
        <Small place="rounds" words="All rounds" />
        <Small place="stakes" words={owed === 0 ? 'Stakes' : `Stakes: ${owed} open`} />
        <Small place="cards" words="Cards and spots" />
        <Small place="files" words="Records in and out" />
      </nav>
      {shooter.demo ? (
        <div className="notice row">
          <p>This is the invented season. Nothing here is real.</p>
          <button type="button" className="button" onClick={() => void removeDemoSeason(gym)}>
            Take the demo season away
          </button>
        </div>
      ) : null}
    </Page>
  );
}

/** A round that was left: it can be gone on with at the very shot. */
function OpenRound() {
  const { court } = useDoors();
  const book = useGym((state) => state.book);
  const nameOf = useNames();
  const { open } = book;
  if (!open) return null;
  const others = othersIn(book, open);
  const { shot, most, fixed } = nextShot(open, others);
  const game = open.pressure?.game ?? null;
  return (
    <div className="notice" role="status">
      <p className="lead">
        {nameOf(open.shooter)}’s {open.condition} round is not finished: {open.game}, shot {shot}
        {fixed ? ` of ${most}` : `, at most ${most}`}.
        {others.length === 0
          ? ''
          : ` It is played together with ${listed(others.map(({ shooter }) => nameOf(shooter)))}.`}
      </p>
      <div className="row">
        <a className="button main" href={writeAddress('court')}>
          Go on at shot {shot}
        </a>
        <button type="button" className="button" onClick={() => void court.end('stopped')}>
          {game
            ? 'End it here: its shots count, its game does not'
            : 'End it here: its shots stay, its mark does not'}
        </button>
      </div>
      <p>Only one round is played at a time, so this one comes first.</p>
    </div>
  );
}

/** The shot a round goes on at, and how many there may be. */
function nextShot(round: Round, others: readonly Round[]): { shot: number; most: number; fixed: boolean } {
  const face = faceOf(round, others);
  const { used, all } = turnsOf(round);
  const { next, most, fixed } = face?.shots ?? { next: used + 1, most: all, fixed: true };
  return { shot: Math.min(next, most), most, fixed };
}

interface SlabProps {
  readonly place: Place;
  readonly name: string;
  readonly words: string;
  readonly main?: boolean;
}

function Slab({ place, name, words, main = false }: SlabProps) {
  const open = useGym((state) => state.book.open !== null);
  const className = main ? 'button slab main' : 'button slab';
  const inside = (
    <>
      <span className="slab-name">{name}</span>
      <span className="slab-words">{words}</span>
    </>
  );
  if (open) {
    return (
      <button type="button" className={className} disabled>
        {inside}
      </button>
    );
  }
  return (
    <a className={className} href={writeAddress(place)}>
      {inside}
    </a>
  );
}

function Small({ place, words }: { readonly place: Place; readonly words: string }) {
  return (
    <a className="button" href={writeAddress(place)}>
      {words}
    </a>
  );
}
