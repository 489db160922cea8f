import { useMemo, useState } from 'react';

import { verdictOf, type Verdict } from '../games/played.ts';
import type { Round } from '../log/book.ts';
import { roundTally } from '../log/roundCells.ts';
import { forecastBefore, inHundred } from '../store/forecast.ts';
import { writeAddress } from '../store/places.ts';
import { nextOfPair, roundById } from '../store/roundActions.ts';
import { forecastOutcomeWords } from './forecastWords.ts';
import { useDoors, useGym } from './gymContext.ts';
import { Page } from './parts/Page.tsx';
import { EFFORT_AFTER, NERVES_AFTER, Rating } from './parts/Rating.tsx';

const TITLES: Readonly<Record<Verdict, string>> = {
  open: 'Still playing',
  beaten: 'You beat the mark',
  short: 'Short of the mark',
  stopped: 'You ended it early',
  void: 'The round was interrupted',
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
  const second = useGym(({ book }) => round.pair !== null && nextOfPair(book, round.pair.id) === 2);
  const book = useGym((state) => state.book);
  const busy = book.open !== null;
  const verdict = verdictOf(round);
  const { makes, attempts } = roundTally(round);
  const forecast = useMemo(() => forecastBefore(book, round), [book, round]);
  const [nerves, setNerves] = useState(round.nervesAfter);
  const [effort, setEffort] = useState(round.effort);
  const [note, setNote] = useState(round.note);
  const last = round.entries.at(-1);

  const done = async () => {
    // The result that comes next is that of whoever shot.
    gym.set({ shooter: round.shooter });
    const saved = await gym.dispatch([
      { type: 'AfterRated', body: { round: round.id, nerves, effort, note: note.trim() } },
    ]);
    if (!saved) return;
    window.location.hash =
      second && round.pair ? writeAddress('pair', round.pair.id) : writeAddress('result');
  };
  const undo = async () => {
    if (await court.undo(round)) window.location.hash = writeAddress('court');
  };

  return (
    <Page title={verdict === null ? 'Round over' : TITLES[verdict]}>
      <div className="columns">
        <section className="panel">
          <p className="figure">
            {makes} of {attempts}
          </p>
          <VerdictWords round={round} verdict={verdict} />
          {forecast ? <p className="quiet">{forecastOutcomeWords(forecast, makes)}</p> : null}
          {round.ending === 'interrupted' || busy ? null : (
            <button type="button" className="button" onClick={() => void undo()}>
              {last?.at === round.endedAt
                ? 'The last entry was wrong: take it back'
                : 'Not over yet: back to the court'}
            </button>
          )}
        </section>
        <section className="panel">
          <Rating {...NERVES_AFTER} value={nerves} onRate={setNerves} />
          <Rating {...EFFORT_AFTER} value={effort} onRate={setEffort} />
          <label className="field">
            Anything to remember?
            <textarea
              rows={2}
              maxLength={500}
              value={note}
              onChange={(change) => setNote(change.target.value)}
            />
          </label>
        </section>
      </div>
      <button type="button" className="button main slab" onClick={() => void done()}>
        <span className="slab-name">{second ? 'On to the second round' : 'Done'}</span>
        <span className="slab-words">
          {second ? 'Rest as long as you did before the first' : 'Save this and see the result'}
        </span>
      </button>
    </Page>
  );
}

function VerdictWords({ round, verdict }: { readonly round: Round; readonly verdict: Verdict | null }) {
  const { mark = null, stake = null } = round.pressure ?? {};
  return (
    <>
      {mark ? (
        <p className="lead">
          The mark was {mark.makes}. Before the round your record said about {inHundred(mark.chance)} times in
          100, with time enough.
        </p>
      ) : null}
      {round.ending === 'time-up' ? <p>The clock ran out before the card did.</p> : null}
      {verdict === 'void' ? (
        <p>
          The device took the sound or the clock away in the middle. Your shots are kept; the mark and the
          stake are off.
        </p>
      ) : null}
      {verdict === 'stopped' ? <p>Your shots are kept. The mark and the stake do not count.</p> : null}
      {stake !== null && verdict === 'beaten' ? (
        <p>Owed to you: {stake}. It stands under Stakes until it is settled.</p>
      ) : null}
      {stake !== null && verdict === 'short' ? (
        <p>You owe: {stake}. It stands under Stakes until it is settled.</p>
      ) : null}
    </>
  );
}
