import { useState } from 'react';

import type { Card } from '../court/cards.ts';
import type { SpotName } from '../court/spots.ts';
import type { Shooter } from '../log/book.ts';
import { CardForm } from './cards/CardForm.tsx';
import { CardList } from './cards/CardList.tsx';
import { SpotForm } from './cards/SpotForm.tsx';
import { SpotList } from './cards/SpotList.tsx';
import { Page } from './parts/Page.tsx';
import './styles/cards.css';

type Doing =
  | { readonly is: 'looking' }
  /** A new card, maybe begun from the stops of another. */
  | { readonly is: 'card'; readonly like: Card | null }
  /** A new spot (`name` null), or one that is put on the floor or moved. */
  | { readonly is: 'spot'; readonly name: SpotName | null };

const TITLES = {
  looking: 'Cards and spots',
  card: 'A card of your own',
  spot: 'A spot of your own',
} as const;

/** The cards that can be shot, cards of one's own, and spots of one's own. */
export function CardsScreen({ shooter }: { readonly shooter: Shooter }) {
  const [doing, setDoing] = useState<Doing>({ is: 'looking' });
  const [said, setSaid] = useState<string | null>(null);
  const begin = (next: Doing) => {
    setSaid(null);
    setDoing(next);
  };
  const back = (words: string | null) => {
    setSaid(words);
    setDoing({ is: 'looking' });
  };
  return (
    <Page title={TITLES[doing.is]}>
      <p role="status" className={said === null ? 'unseen' : 'notice'}>
        {said}
      </p>
      {doing.is === 'looking' ? (
        <div className="columns">
          <CardList onMake={(like) => begin({ is: 'card', like })} onSaid={setSaid} />
          <SpotList shooter={shooter} onPlace={(name) => begin({ is: 'spot', name })} />
        </div>
      ) : null}
      {doing.is === 'card' ? <CardForm shooter={shooter} like={doing.like} onDone={back} /> : null}
      {doing.is === 'spot' ? <SpotForm shooter={shooter} known={doing.name} onDone={back} /> : null}
    </Page>
  );
}
