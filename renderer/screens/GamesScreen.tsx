import { useMemo, useState } from 'react';

import type { Shooter } from '../log/book.ts';
import type { GameFamily } from '../pressure/gamePlan.ts';
import { gamesOf, type ListedGame } from '../store/gameActions.ts';
import type { Price } from '../store/gamePrices.ts';
import { writeAddress } from '../store/places.ts';
import { GameFileIn } from './games/GameFileIn.tsx';
import { GameRow } from './games/GameRow.tsx';
import { FAMILIES, FAMILY_WORDS } from './games/priceWords.ts';
import { useGamePrices, usePrices } from './games/usePrices.ts';
import { useGym } from './gymContext.ts';
import { Choice } from './parts/Choice.tsx';
import { Page } from './parts/Page.tsx';
import './styles/files.css';
import './styles/games.css';

type Kind = GameFamily | 'all' | 'own';

/** The games, the shooter's own first, each with its chance and its length at the shooter's rate. */
export function GamesScreen({ shooter }: { readonly shooter: Shooter }) {
  const own = useGym(({ book }) => book.games);
  const games = useMemo(() => gamesOf({ games: own }), [own]);
  const prices = useGamePrices(shooter);
  const known = usePrices(prices, games);
  const [kind, setKind] = useState<Kind>('all');
  const [said, setSaid] = useState<string | null>(null);
  const groups = groupsOf(games, kind);
  return (
    <Page title="Games">
      <p role="status" className={said === null ? 'unseen' : 'notice'}>
        {said}
      </p>
      <p className="lead">
        Chances and lengths as they are for {shooter.name}: under pressure, good and bad days counted in.
      </p>
      <div className="row">
        <a className="button main" href={writeAddress('game')}>
          Make a game of your own
        </a>
        <a className="button" href={writeAddress('duel')}>
          A duel
        </a>
        <a className="button" href={writeAddress('together')}>
          Play together
        </a>
      </div>
      <Choice
        question="Which kind?"
        answers={[
          { value: 'all', words: 'All' },
          ...(own.size > 0 ? [{ value: 'own', words: 'Your own' } as const] : []),
          ...FAMILIES.map((family) => ({ value: family, words: FAMILY_WORDS[family].name })),
        ]}
        value={kind}
        onChoose={setKind}
      />
      {groups.map((group) => (
        <Group key={group.name} {...group} prices={known} onSaid={setSaid} />
      ))}
      <GameFileIn prices={prices} onSaid={setSaid} />
    </Page>
  );
}

interface Shown {
  readonly name: string;
  readonly words: string;
  readonly games: readonly ListedGame[];
}

/** The games under headings: the shooter's own, then family by family. */
function groupsOf(games: readonly ListedGame[], kind: Kind): Shown[] {
  const own: Shown = {
    name: 'Your own',
    words: 'Made on this device, or brought in.',
    games: games.filter(
      (game) => game.own && (kind === 'all' || kind === 'own' || kind === game.plan.family),
    ),
  };
  const families = FAMILIES.filter((family) => kind === 'all' || kind === family).map((family): Shown => ({
    ...FAMILY_WORDS[family],
    games: games.filter((game) => !game.own && game.plan.family === family),
  }));
  return [own, ...families].filter((group) => group.games.length > 0);
}

interface GroupProps extends Shown {
  readonly prices: ReadonlyMap<string, Price>;
  readonly onSaid: (words: string) => void;
}

function Group({ name, words, games, prices, onSaid }: GroupProps) {
  return (
    <section className="panel" aria-label={name}>
      <h2>{name}</h2>
      <p className="quiet">{words}</p>
      <ul className="game-list">
        {games.map((game) => (
          <GameRow key={game.id} game={game} price={prices.get(game.id)} onSaid={onSaid} />
        ))}
      </ul>
    </section>
  );
}
