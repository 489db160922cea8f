import { useState, type ReactNode } from 'react';

import { isoDateAt } from '../../basics/days.ts';
import { SHOT_WORDS, spotWords } from '../../court/spots.ts';
import type { Shooter } from '../../log/book.ts';
import type { Figures } from '../../store/figures.ts';
import type { MixWish } from '../../store/study.ts';
import { dayWords } from '../dayWords.ts';
import { useDoors, useGym, useStudy } from '../gymContext.ts';
import { Choice } from '../parts/Choice.tsx';
import { WorkingBar } from '../parts/WorkingBar.tsx';
import { mixOfToday, mixShares, type MixShare } from './mixShares.ts';
import { Part, Yours } from './Part.tsx';

interface Props {
  readonly shooter: Shooter;
  readonly figures: Pick<Figures, 'spots'>;
}

const WISHES: readonly { readonly value: MixWish; readonly words: string }[] = [
  { value: 'own', words: 'Your own mix' },
  { value: 'free-throws', words: 'Free throws only' },
];

/** Which shots the drop is worked out for, and the way to change that. */
export function MixKept({ shooter, figures: { spots } }: Props) {
  const { gym, studyRoom } = useDoors();
  const kept = useGym(({ book }) => book.mixes.get(shooter.id));
  const wish = useStudy(({ mix }) => mix);
  const [said, setSaid] = useState('');
  const keep = async () => {
    const saved = await studyRoom.keepMixOfToday();
    setSaid(saved ? 'Kept from today on.' : 'That could not be saved. Try again.');
  };
  return (
    <MixPart>
      {kept ? (
        <Yours>kept since {dayWords(isoDateAt(kept.at, gym.moment().zone))}.</Yours>
      ) : (
        <Yours>all relaxed shots so far; kept from your first verdict on.</Yours>
      )}
      <MixList shares={mixShares(kept?.mix ?? mixOfToday(spots), spots)} />
      <Choice
        question="Which shots is your drop worked out for?"
        answers={WISHES}
        value={wish}
        onChoose={(mix) => studyRoom.choose(mix)}
      />
      <div className="row">
        <button type="button" className="button" onClick={() => void keep()}>
          Work it out for my mix as it is today
        </button>
        <p role="status">{said}</p>
      </div>
      <p className="quiet">
        To work it out for today’s mix, all your relaxed shots so far, and the pressure usual by today, moves
        the drop of every week, also of past ones.
      </p>
      <WorkingBar />
    </MixPart>
  );
}

function MixPart({ children }: { readonly children: ReactNode }) {
  return (
    <Part title="The mix of shots, and why it stands still">
      <p>
        Pressure may cost more from the corner than at the line, so a drop is always the drop of some mix of
        shots. Yours is the mix you shoot relaxed. It is kept from your first verdict on: a mix that moved
        would move the drop without any change in you. With it is kept how much pressure you usually took on
        by then, and of what kind, so that raising it later does not move the drop of past weeks.
      </p>
      {children}
    </Part>
  );
}

/** A mix, place by place. */
export function MixList({ shares }: { readonly shares: readonly MixShare[] }) {
  if (shares.length === 0) return <p>No relaxed shot yet.</p>;
  return (
    <ul className="mix-list">
      {shares.map(({ spot, shot, share, unseen }) => (
        <li key={`${spot} ${shot}`}>
          <span>
            {spotWords(spot)}, {SHOT_WORDS[shot]}
            {unseen ? <span className="quiet"> · never under pressure yet</span> : null}
          </span>
          <span>{share < 0.01 ? 'under 1' : Math.round(100 * share)} %</span>
        </li>
      ))}
    </ul>
  );
}
