import { useMemo, useState } from 'react';

import type { GameId } from '../basics/ids.ts';
import { STANDARD_CARDS, type Stop } from '../court/cards.ts';
import { gameFault } from '../games/gameFault.ts';
import { fitted, freshPlan } from '../games/newPlan.ts';
import type { Shooter } from '../log/book.ts';
import type { GameFamily, GamePlan } from '../pressure/gamePlan.ts';
import { gameById, type GameDraft } from '../store/gameActions.ts';
import { writeAddress } from '../store/places.ts';
import { ClockForm } from './games/ClockForm.tsx';
import { GameOutlook } from './games/GameOutlook.tsx';
import { KeepGame } from './games/KeepGame.tsx';
import { PlayOnce } from './games/PlayOnce.tsx';
import { FAMILIES, FAMILY_WORDS } from './games/priceWords.ts';
import { RuleForm } from './games/RuleForm.tsx';
import { ShotsForm } from './games/ShotsForm.tsx';
import { useGamePrices } from './games/usePrices.ts';
import { useGym } from './gymContext.ts';
import { Choice } from './parts/Choice.tsx';
import { Page } from './parts/Page.tsx';
import { YesNo } from './parts/YesNo.tsx';
import './styles/cards.css';
import './styles/games.css';

interface Props {
  readonly shooter: Shooter;
  /** The game that is changed, or that a new one is like; null for one from nothing. */
  readonly about: string | null;
}

const LINE: readonly Stop[] = [{ spot: 'free-throw', shot: 'free-throw', attempts: 10 }];

/** Makes a game: its shots, its rule, its clock, and at once what it is worth to the shooter. */
export function GameScreen({ shooter, about }: Props) {
  const games = useGym(({ book }) => book.games);
  const known = useMemo(() => gameById({ games }, about), [games, about]);
  const [draft, setDraft] = useState<GameDraft>(() => startFrom(known));
  const [byHand, setByHand] = useState(false);
  const prices = useGamePrices(shooter);
  const set = (change: Partial<GameDraft>) => setDraft((old) => ({ ...old, ...change }));
  const own: GameId | null = known?.own ? known.id : null;
  const { plan, stops, clock } = draft;

  const chooseFamily = (family: GameFamily) => {
    const card = family === 'trips' && stops[0]?.shot !== 'free-throw' ? LINE : stops;
    const next = freshPlan(family, card);
    set({ stops: card, plan: next, clock: ownClock(next, plan.family === 'last shot' ? null : clock) });
  };

  return (
    <Page
      title={own === null ? 'A game of your own' : `Change ${known?.name ?? 'it'}`}
      aside={
        <a className="button" href={writeAddress('games')}>
          All games
        </a>
      }
    >
      <div className="game-columns">
        <div className="game-parts">
          <section className="panel">
            <h2>The rule</h2>
            <Choice
              question="What kind of game?"
              hint={FAMILY_WORDS[plan.family].words}
              answers={FAMILIES.map((family) => ({ value: family, words: FAMILY_WORDS[family].name }))}
              value={plan.family}
              onChoose={chooseFamily}
            />
            <RuleForm
              plan={plan}
              stops={stops}
              onChange={(next) => set({ plan: next, clock: ownClock(next, clock) })}
            />
          </section>
          <section className="panel">
            <h2>The shots</h2>
            {plan.family === 'trips' ? (
              <p>From the free-throw line, trip by trip.</p>
            ) : (
              <ShotsForm
                shooter={shooter}
                stops={stops}
                byHand={byHand}
                onChange={(next, hand) => {
                  setByHand(hand);
                  set({ stops: next, plan: fitted(plan, next) });
                }}
              />
            )}
          </section>
          <section className="panel">
            <h2>Clock and noise</h2>
            <ClockForm
              plan={plan}
              clock={clock}
              rules={shooter.rules}
              onChange={(next) => set({ clock: next })}
            />
            <YesNo
              question="Crowd noise from the loudspeaker?"
              hint="Stake, watchers and how hard it should be are chosen each time it is played."
              value={draft.crowd}
              onChoose={(crowd) => set({ crowd })}
            />
          </section>
        </div>
        <div className="game-beside">
          <section className="panel game-worth" aria-label="What it is worth to you">
            <GameOutlook game={draft} prices={prices} />
          </section>
          {gameFault(plan, stops) === null ? (
            <PlayOnce key={JSON.stringify([plan, stops, clock])} game={draft} prices={prices} />
          ) : null}
          <KeepGame draft={draft} own={own} onName={(name) => set({ name })} />
        </div>
      </div>
    </Page>
  );
}

function startFrom(known: ReturnType<typeof gameById>): GameDraft {
  if (!known) {
    const [card] = STANDARD_CARDS;
    const stops = card?.stops ?? LINE;
    return { name: '', stops, plan: freshPlan('reach', stops), clock: null, crowd: true };
  }
  const { name, stops, plan, clock, crowd } = known;
  return { name: known.own ? name : '', stops, plan, clock, crowd };
}

/** Racks and last shots are nothing without their clock; other games keep the one they have. */
function ownClock(plan: GamePlan, clock: GameDraft['clock']): GameDraft['clock'] {
  if (plan.family === 'last shot') return { kind: 'shot', seconds: plan.to };
  if (plan.family === 'racks' && clock?.kind !== 'round') return { kind: 'round', seconds: 60 };
  return clock;
}
