import { useMemo, useRef, useState } from 'react';

import { attemptsOn, type Card } from '../court/cards.ts';
import { doublesNext, type Debt } from '../games/ledger.ts';
import type { Shooter } from '../log/book.ts';
import type { Condition } from '../log/events.ts';
import type { Mark, PressureSetup } from '../pressure/ingredients.ts';
import { marksFor } from '../store/forecast.ts';
import { lineFor, refusalOf, wishOnLine, type Refusal } from '../store/line.ts';
import { writeAddress } from '../store/places.ts';
import type { ListedGame } from '../store/gameActions.ts';
import { freshWish, gameWish, setupOf, wishFor, type PressureWish } from '../store/pressureWish.ts';
import { cardsOf, startRound, tossPair } from '../store/roundActions.ts';
import { gamePanels } from './games/gamePanels.tsx';
import { GameShots } from './games/GameShots.tsx';
import { useGameToPlay } from './games/useGameToPlay.ts';
import { useDoors, useGym } from './gymContext.ts';
import { BodyPanel } from './line/BodyPanel.tsx';
import { refusalWords } from './line/lineWords.ts';
import { CardChoice, EntryChoice } from './parts/CardChoice.tsx';
import { MissSidesChoice } from './parts/MissSidesChoice.tsx';
import { Page } from './parts/Page.tsx';
import { PressureForm } from './parts/PressureForm.tsx';
import { NERVES_BEFORE, Rating } from './parts/Rating.tsx';
import { RoundOutlook } from './parts/RoundOutlook.tsx';
import './styles/games.css';
import './styles/line.css';

interface Props {
  readonly shooter: Shooter;
  readonly condition: Condition | 'pair';
  /** The debt that is shot for, double or nothing. */
  readonly doubling?: Debt;
  /** Played in place of a mark on a card. */
  readonly game?: ListedGame;
}

const TITLES = { relaxed: 'A relaxed round', pressured: 'A pressured round', pair: 'A pair' } as const;

/** Sets a round up, or both rounds of a pair. */
export function RoundSetupScreen({ shooter, condition, doubling, game }: Props) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const settings = useGym((state) => state.settings);
  const cards = cardsOf(book);
  const [card, setCard] = useState<Card>(() => {
    const again = cards.find(({ id }) => id === doubling?.round.card);
    return game ? cardOf(game) : (again ?? (cards[0] as Card));
  });
  const [wish, setWish] = useState<PressureWish>(() => ({
    ...(game ? gameWish(game) : freshWish(attemptsOn(card.stops))),
    ...(doubling ? { stake: doubling.stake, doubles: doublesNext(doubling) } : {}),
  }));
  const line = useMemo(
    () => (condition === 'relaxed' ? null : lineFor(book, shooter.id, gym.moment())),
    [gym, book, shooter, condition],
  );
  const play = useGameToPlay(shooter, game ?? null, wish);
  // A game is told shot by shot: its rule goes by their order.
  const entry = game ? 'each-shot' : settings.entry;
  const [refused, setRefused] = useState<Refusal | null>(null);
  const [nerves, setNerves] = useState<number | null>(null);
  const [asked, setAsked] = useState(false);
  const nervesPanel = useRef<HTMLElement>(null);
  const bodyPanel = useRef<HTMLDivElement>(null);

  const chooseCard = (next: Card) => {
    setCard(next);
    const fresh = freshWish(attemptsOn(next.stops));
    setWish((old) => ({ ...old, markMakes: null, roundSeconds: fresh.roundSeconds }));
  };
  /** What is logged of the pressure, or why it is not to be started; null for a relaxed round. */
  const setup = (): { pressure: PressureSetup | null; refusal: Refusal | null } => {
    if (line === null) return { pressure: null, refusal: null };
    const open = wishOnLine(line, wishFor(entry, wish));
    const pressure = play
      ? setupOf(open, null, play.seed, play.toPlay.played)
      : setupOf(open, markFor(open), gym.newSeed());
    return { pressure, refusal: refusalOf(book, shooter.id, line, open, pressure) };
  };
  const markFor = (open: PressureWish): Mark | null => {
    if (!open.mark) return null;
    const marks = marksFor(book, shooter.id, card.stops, gym.moment());
    const makes = open.markMakes ?? marks.nearest(open.wanted);
    return { makes, chance: marks.chance(makes) };
  };
  const start = async () => {
    const plan = { shooter: shooter.id, card, entry };
    const { pressure, refusal } = setup();
    setRefused(refusal);
    if (refusal) {
      if (refusal === 'unasked') bodyPanel.current?.scrollIntoView({ block: 'center' });
      return;
    }
    if (condition === 'pair' && pressure) {
      const pair = await tossPair(gym, { ...plan, pressure });
      if (pair) window.location.hash = writeAddress('pair', pair);
      return;
    }
    if (nerves === null) {
      setAsked(true);
      nervesPanel.current?.scrollIntoView({ block: 'center' });
      return;
    }
    const round = await startRound(gym, {
      ...plan,
      condition: pressure ? 'pressured' : 'relaxed',
      nerves,
      pressure,
      pair: null,
    });
    if (round) window.location.hash = writeAddress('court');
  };

  return (
    <Page title={doubling ? 'Double or nothing' : (game?.name ?? TITLES[condition])}>
      {condition === 'pair' ? (
        <p className="lead">
          The same card twice, once relaxed and once pressured. A coin decides which comes first, so that
          being warm or tired cannot favour either.
        </p>
      ) : null}
      {line ? (
        <div ref={bodyPanel}>
          <BodyPanel shooter={shooter.id} line={line} />
        </div>
      ) : null}
      <div className="columns packed">
        <section className="panel">
          {game ? (
            <GameShots game={game} />
          ) : (
            <>
              <CardChoice cards={cards} value={card} onChoose={chooseCard} />
              <RoundOutlook shooter={shooter.id} condition={condition} stops={card.stops} />
              <EntryChoice value={settings.entry} onChoose={(way) => gym.set({ entry: way })} />
            </>
          )}
          {entry === 'each-shot' ? <MissSidesChoice /> : null}
        </section>
        {line ? (
          <PressureForm
            wish={wish}
            card={card}
            shooter={shooter.id}
            rules={shooter.rules}
            entry={entry}
            line={line}
            onChange={(next) => {
              setWish(next);
              setRefused(null);
            }}
            {...(play ? { instead: gamePanels(play, wish, shooter.rules, setWish) } : {})}
          />
        ) : null}
      </div>
      {condition === 'pair' ? null : (
        <section className="panel" ref={nervesPanel}>
          <Rating {...NERVES_BEFORE} value={nerves} onRate={setNerves} />
          {asked && nerves === null ? (
            <p className="notice warn" role="alert">
              Please tap a number first. Without it nobody can tell later whether pressure was felt.
            </p>
          ) : null}
        </section>
      )}
      <p className="quiet">
        Warm up with ten to fifteen shots that nobody counts. Stop when something hurts; if it stays, someone
        licensed should look at it.
      </p>
      {refused && line && !(refused === 'unasked' && line.body) ? (
        <p className="notice warn" role="alert">
          {refusalWords(refused, line)}
        </p>
      ) : null}
      <button
        type="button"
        // Held at the foot of the screen only once nothing is left to be asked below it.
        className={`button main slab start-bar${condition === 'pair' || nerves !== null ? '' : ' not-yet'}`}
        onClick={() => void start()}
      >
        <span className="slab-name">{condition === 'pair' ? 'Toss the coin' : 'To the court'}</span>
        <span className="slab-words">
          {play ? play.toPlay.played.name : `${card.name}, ${attemptsOn(card.stops)} shots`}
        </span>
      </button>
    </Page>
  );
}

/** What the round of a game is shot on: a card that goes by the game's name. */
function cardOf({ id, name, stops }: ListedGame): Card {
  return { id: String(id), name, stops };
}
