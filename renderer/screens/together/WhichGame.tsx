import { useMemo, useState } from 'react';

import type { GameFamily } from '../../pressure/gamePlan.ts';
import { duelOn, FIRST_DUEL, groupGamesOf, type GroupGame } from '../../store/groupWish.ts';
import { cardsOf } from '../../store/roundActions.ts';
import { stopsWords } from '../cards/stopsWords.ts';
import { FAMILIES, FAMILY_WORDS } from '../games/priceWords.ts';
import { goalWords } from '../gameWords.ts';
import { useGym } from '../gymContext.ts';
import { Choice } from '../parts/Choice.tsx';

type Kind = GameFamily | 'own';

interface Props {
  readonly game: GroupGame;
  readonly players: number;
  readonly onChoose: (game: GroupGame) => void;
}

/** The games that several can play: each for themselves, or two against each other. */
export function WhichGame({ game, players, onChoose }: Props) {
  const own = useGym(({ book }) => book.games);
  const games = useMemo(() => groupGamesOf({ games: own }), [own]);
  const [kind, setKind] = useState<Kind>(game.plan.family);
  const shown = games.filter((one) => (kind === 'own' ? one.own : one.plan.family === kind));
  const known = shown.find(({ id }) => id === game.id);
  const choose = (next: Kind) => {
    setKind(next);
    if (next === 'duel') {
      onChoose(duelOn(FIRST_DUEL));
      return;
    }
    const first = games.find((one) => (next === 'own' ? one.own : one.plan.family === next));
    if (first) onChoose(first);
  };
  return (
    <section className="panel" aria-label="Which game?">
      <Choice
        question="Which game?"
        {...(players > 2 ? { hint: 'A duel is for two.' } : {})}
        answers={[
          ...(own.size > 0 ? [{ value: 'own', words: 'Your own' } as const] : []),
          ...FAMILIES.map((family) => ({
            value: family,
            words: FAMILY_WORDS[family].name,
            disabled: family === 'duel' && players > 2,
          })),
        ]}
        value={kind}
        onChoose={choose}
      />
      {kind === 'duel' ? (
        <DuelCard game={game} onChoose={onChoose} />
      ) : (
        <>
          <Choice
            question="Which one?"
            answers={shown.map(({ id, name }) => ({ value: id as string, words: name }))}
            value={game.id}
            onChoose={(id) => {
              const chosen = shown.find((one) => one.id === id);
              if (chosen) onChoose(chosen);
            }}
          />
          <p>{known?.words ?? `${goalWords(game.plan, game.stops)}.`}</p>
        </>
      )}
      <p className="quiet">
        {stopsWords(game.plan.family === 'trips' ? game.stops.slice(0, 1) : game.stops)}
      </p>
    </section>
  );
}

/** A duel is shot on a card. */
function DuelCard({ game, onChoose }: Pick<Props, 'game' | 'onChoose'>) {
  const own = useGym(({ book }) => book.cards);
  const cards = useMemo(() => cardsOf({ cards: own }), [own]);
  return (
    <>
      <p>{FAMILY_WORDS.duel.words} More makes win; level goes on pair by pair.</p>
      <Choice
        question="On which card?"
        answers={cards.map(({ id, name }) => ({ value: id as string, words: name }))}
        value={game.plan.family === 'duel' ? game.id : null}
        onChoose={(id) => {
          const card = cards.find((one) => one.id === id);
          if (card) onChoose(duelOn(card));
        }}
      />
    </>
  );
}
