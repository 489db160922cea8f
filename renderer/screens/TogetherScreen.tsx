import { useMemo, useState } from 'react';

import type { ShooterId } from '../basics/ids.ts';
import { present } from '../basics/invariant.ts';
import type { Book, Shooter } from '../log/book.ts';
import { gameById } from '../store/gameActions.ts';
import { startGroup, stakeOf } from '../store/groupActions.ts';
import { groupLine, groupRefusal, type GroupRefusal } from '../store/groupLine.ts';
import { seatsFor } from '../store/groupPrices.ts';
import {
  duelOn,
  FIRST_DUEL,
  fitsGame,
  freshGroup,
  groupGamesOf,
  rematchOf,
  withGame,
  type GroupWish,
} from '../store/groupWish.ts';
import { writeAddress } from '../store/places.ts';
import { useDoors, useGym } from './gymContext.ts';
import { Page } from './parts/Page.tsx';
import { AskEach } from './together/AskEach.tsx';
import { GroupStake } from './together/GroupStake.tsx';
import { HowFair } from './together/HowFair.tsx';
import { NotYet } from './together/NotYet.tsx';
import { TakingTurns } from './together/TakingTurns.tsx';
import { WhichGame } from './together/WhichGame.tsx';
import { WhoPlays } from './together/WhoPlays.tsx';
import './styles/games.css';
import './styles/together.css';

interface Props {
  readonly shooter: Shooter;
  /** A game to play, or a round of a group that plays the same again. */
  readonly about: string | null;
}

/** Sets a game of several up, asks each of them, and starts it. */
export function TogetherScreen({ shooter, about }: Props) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const [wish, setWish] = useState<GroupWish>(
    () => rematchOf(book, about) ?? firstWish(book, shooter, about),
  );
  // Drawn when the form is opened, since the chances that are shown may hang on it.
  const [seed] = useState(() => gym.newSeed());
  const [nerves, setNerves] = useState<ReadonlyMap<ShooterId, number | null>>(new Map());
  /** Whose turn it is to be asked; null while the game is set up. */
  const [asked, setAsked] = useState<number | null>(null);
  const [refused, setRefused] = useState<GroupRefusal | null>(null);
  const { shooters, game, wanted, headStart } = wish;
  const seats = useMemo(
    () => seatsFor(book, { shooters, game, wanted, headStart }, seed, gym.moment()),
    [gym, book, shooters, game, wanted, headStart, seed],
  );
  const line = useMemo(() => groupLine(book, shooters, gym.moment()), [gym, book, shooters]);
  const set = (change: Partial<GroupWish>) => setWish((old) => ({ ...old, ...change }));

  const start = async (final: GroupWish, told: typeof nerves) => {
    const now = gym.store.getState().book;
    const refusal = groupRefusal(now, final.shooters, stakeOf(final), gym.moment());
    setRefused(refusal);
    if (refusal) return;
    const places = seatsFor(now, final, seed, gym.moment());
    const rounds = await startGroup(gym, { wish: final, seats: places, nerves: told, seed });
    if (rounds) window.location.hash = writeAddress('court');
  };
  const answer = (value: number | null) => {
    const at = asked ?? 0;
    const told = new Map(nerves).set(present(shooters[at], 'who was asked'), value);
    setNerves(told);
    if (at + 1 < shooters.length) setAsked(at + 1);
    else void start(wish, told);
  };
  const back = () => {
    setRefused(null);
    setAsked(null);
  };

  if (refused) {
    return (
      <NotYet
        refusal={refused}
        wish={wish}
        line={line}
        onBack={back}
        onStart={(changed) => {
          setWish(changed);
          void start(changed, nerves);
        }}
      />
    );
  }
  const who = asked === null ? undefined : shooters[asked];
  if (asked !== null && who !== undefined) {
    return (
      <AskEach
        key={who}
        shooter={who}
        next={shooters[asked + 1] ?? null}
        nerves={nerves.get(who) ?? null}
        onAnswer={answer}
        onBack={() => (asked === 0 ? back() : setAsked(asked - 1))}
      />
    );
  }
  return (
    <Page title="Play together">
      <div className="columns packed">
        <WhoPlays host={shooter} chosen={shooters} onChoose={(chosen) => set({ shooters: chosen })} />
        <WhichGame
          game={game}
          players={shooters.length}
          onChoose={(chosen) => setWish((old) => withGame(old, chosen))}
        />
        <HowFair wish={wish} seats={seats} onChange={set} />
        <TakingTurns wish={wish} onChange={set} />
        <GroupStake wish={wish} line={line} onChange={set} />
      </div>
      <p className="quiet">
        Warm up with ten to fifteen shots that nobody counts. Stop when something hurts; if it stays, someone
        licensed should look at it.
      </p>
      <StartBar wish={wish} onStart={() => setAsked(0)} />
    </Page>
  );
}

function StartBar({ wish, onStart }: { readonly wish: GroupWish; readonly onStart: () => void }) {
  const busy = useGym(({ book }) => book.open !== null);
  const { shooters, game } = wish;
  const ready = fitsGame(game, shooters.length);
  if (busy) {
    return (
      <div className="notice row">
        <p>A round is not finished, and only one is played at a time.</p>
        <a className="button main" href={writeAddress('court')}>
          To the court
        </a>
      </div>
    );
  }
  return (
    <button type="button" className="button main slab start-bar" disabled={!ready} onClick={onStart}>
      <span className="slab-name">{ready ? 'On to each of you' : waitWords(wish)}</span>
      <span className="slab-words">{game.name}: nerves first, each for themselves</span>
    </button>
  );
}

function waitWords({ game, shooters }: GroupWish): string {
  if (game.plan.family === 'duel') return 'A duel is for two';
  return shooters.length === 0 ? 'Who plays?' : 'Who else plays?';
}

/** Whoever is at the bench, and a game to begin with. */
function firstWish(book: Book, shooter: Shooter, about: string | null): GroupWish {
  if (about === 'duel') return freshGroup([shooter.id], duelOn(FIRST_DUEL));
  const games = groupGamesOf(book);
  const named = gameById(book, about);
  const game = games.find(({ id }) => id === named?.id) ?? present(games[0], 'a game');
  return freshGroup([shooter.id], game);
}
