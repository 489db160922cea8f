import { useMemo, useState } from 'react';

import type { RoundId } from '../basics/ids.ts';
import { othersIn } from '../games/gameOn.ts';
import { standings } from '../games/group.ts';
import { verdictOf, type Verdict } from '../games/played.ts';
import type { Book, Round } from '../log/book.ts';
import { roundTally } from '../log/roundCells.ts';
import { forecastBefore } from '../store/forecast.ts';
import { rematchOf } from '../store/groupWish.ts';
import { writeAddress } from '../store/places.ts';
import { nextOfPair, roundById } from '../store/roundActions.ts';
import { FeltPanel, feltOf, ratedFact, type Felt } from './after/FeltPanel.tsx';
import { GroupFelt } from './after/GroupFelt.tsx';
import { Standings } from './after/Standings.tsx';
import { VerdictWords } from './after/VerdictWords.tsx';
import { forecastOutcomeWords } from './forecastWords.ts';
import { GAME_TITLES } from './gameWords.ts';
import { useDoors, useGym } from './gymContext.ts';
import { listed } from './parts/listed.ts';
import { Page } from './parts/Page.tsx';

const TITLES: Readonly<Record<Verdict, string>> = {
  ...GAME_TITLES,
  beaten: 'You beat the mark',
  short: 'Short of the mark',
};

/** The verdict, and how it felt. */
export function AfterScreen({ about }: { readonly about: string | null }) {
  const round = useGym(({ book }) => roundById(book, about));
  if (!round || round.state !== 'ended') {
    return (
      <Page title="This round is not over">
        <a className="button main" href={writeAddress('court')}>
          To the court
        </a>
      </Page>
    );
  }
  return <RoundOver round={round} />;
}

function RoundOver({ round }: { readonly round: Round }) {
  const { court, gym } = useDoors();
  const book = useGym((state) => state.book);
  const second = round.pair !== null && nextOfPair(book, round.pair.id) === 2;
  const others = useMemo(() => othersIn(book, round), [book, round]);
  const together = [round, ...others];
  const alone = round.group === null;
  const verdict = verdictOf(round, others);
  const [felt, setFelt] = useState<ReadonlyMap<RoundId, Felt>>(() =>
    alone ? new Map([[round.id, feltOf(round)]]) : new Map(),
  );
  const tell = (id: RoundId, told: Felt) => setFelt(new Map([...felt, [id, told]]));

  const again = useMemo(() => rematchOf(book, round.id) !== null, [book, round.id]);

  const done = async (next: string) => {
    // The result that comes next is that of whoever shot.
    const bench = gym.store.getState().settings.shooter;
    if (!together.some(({ shooter }) => shooter === bench)) gym.set({ shooter: round.shooter });
    const saved = await gym.dispatch([...felt].map(([id, told]) => ratedFact(id, told)));
    if (saved) window.location.hash = next;
  };
  const onward =
    second && round.pair ? writeAddress('pair', round.pair.id) : writeAddress(alone ? 'result' : 'bench');

  return (
    <Page title={titleOf(book, together, verdict)}>
      <div className="columns">
        <section className="panel">
          {alone ? <Tally round={round} /> : <Standings rounds={together} />}
          <VerdictWords round={round} others={others} verdict={verdict} />
          <TakeBack round={round} others={others} undo={() => court.undo(round)} />
        </section>
        <section className="panel">
          {alone ? (
            <FeltPanel
              pressured={round.condition === 'pressured'}
              felt={felt.get(round.id) ?? feltOf(round)}
              onTell={(told) => tell(round.id, told)}
            />
          ) : (
            <GroupFelt rounds={together.toSorted(byPlace)} felt={felt} onTell={tell} />
          )}
        </section>
      </div>
      {again ? (
        <button
          type="button"
          className="button slab"
          onClick={() => void done(writeAddress('together', round.id))}
        >
          <span className="slab-name">The same again</span>
          <span className="slab-words">Same game, same shooters, new luck</span>
        </button>
      ) : null}
      <button type="button" className="button main slab" onClick={() => void done(onward)}>
        <span className="slab-name">{second ? 'On to the second round' : 'Done'}</span>
        <span className="slab-words">{nextWords(second, alone)}</span>
      </button>
    </Page>
  );
}

function Tally({ round }: { readonly round: Round }) {
  const book = useGym((state) => state.book);
  const forecast = useMemo(() => forecastBefore(book, round), [book, round]);
  const { makes, attempts } = roundTally(round);
  return (
    <>
      <p className="figure">
        {makes} of {attempts}
      </p>
      {forecast ? <p className="quiet">{forecastOutcomeWords(forecast, makes)}</p> : null}
    </>
  );
}

interface TakeBackProps {
  readonly round: Round;
  readonly others: readonly Round[];
  readonly undo: () => Promise<boolean>;
}

/** The way back to the court, as long as no other round has been begun. */
function TakeBack({ round, others, undo }: TakeBackProps) {
  const busy = useGym((state) => state.book.open !== null);
  if (busy || round.ending === 'interrupted') return null;
  const all = [round, ...others];
  const last = Math.max(...all.map(({ entries }) => entries.at(-1)?.at ?? -Infinity));
  const ended = Math.max(...all.map(({ endedAt }) => endedAt ?? -Infinity));
  const back = async () => {
    if (await undo()) window.location.hash = writeAddress('court');
  };
  return (
    <button type="button" className="button" onClick={() => void back()}>
      {last === ended ? 'The last entry was wrong: take it back' : 'Not over yet: back to the court'}
    </button>
  );
}

/** Of several shooters whoever won is named. */
function titleOf(book: Book, together: readonly Round[], verdict: Verdict | null): string {
  const [round] = together;
  if (verdict === null) return 'Round over';
  if (!round?.group) return round?.pressure?.game ? GAME_TITLES[verdict] : TITLES[verdict];
  if (verdict === 'void' || verdict === 'level') return GAME_TITLES[verdict];
  const winners = standings(together)
    .filter(({ won }) => won)
    .map((standing) => book.shooters.get(standing.round.shooter)?.name ?? 'Someone');
  if (winners.length > 0) return `${listed(winners)} won`;
  return verdict === 'stopped' ? 'The game was ended early' : 'Nobody won this time';
}

function nextWords(second: boolean, alone: boolean): string {
  if (second) return 'Rest as long as you did before the first';
  return alone ? 'Save this and see the result' : 'Save this and go back to the bench';
}

function byPlace(a: Round, b: Round): number {
  return (a.group?.place ?? 0) - (b.group?.place ?? 0);
}
