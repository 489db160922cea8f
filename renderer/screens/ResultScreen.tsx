import type { Shooter } from '../log/book.ts';
import { shooterFigures } from '../store/figures.ts';
import { writeAddress } from '../store/places.ts';
import { useGym, useStudy } from './gymContext.ts';
import { DropSentence } from './parts/DropSentence.tsx';
import { NoRounds } from './parts/NoRounds.tsx';
import { Page } from './parts/Page.tsx';
import { RoundList } from './parts/RoundList.tsx';
import { WorkingBar } from './parts/WorkingBar.tsx';
import { BySpot } from './result/BySpot.tsx';
import { HowSure } from './result/HowSure.tsx';
import { MixSwitch } from './result/MixSwitch.tsx';
import { MoreFromRecord } from './result/MoreFromRecord.tsx';
import { NoPressureFelt } from './result/NoPressureFelt.tsx';
import { TurnsTheScrew } from './result/TurnsTheScrew.tsx';
import { WeekByWeek } from './result/WeekByWeek.tsx';
import { WhatHangsOnIt } from './result/WhatHangsOnIt.tsx';
import { WhatNext } from './result/WhatNext.tsx';
import { indexToTell } from './studyParts.ts';

/** How many rounds stand under the result; all of them have a screen of their own. */
const LATEST = 5;

/** What pressure does to a shooter's shot: the sentence and how sure it is, what to do about it, and the bare counts. */
export function ResultScreen({ shooter }: { readonly shooter: Shooter }) {
  const book = useGym((state) => state.book);
  const figures = shooterFigures(book, shooter.id);
  const { ownSpots } = book;
  const study = useStudy((state) => state.study);
  const forecasts = useStudy((state) => state.forecasts);
  const hangs = useStudy((state) => state.hangs);
  const broken = useStudy((state) => state.broken);
  const mix = useStudy((state) => state.mix);
  const index = indexToTell(study);
  const title = `${shooter.name}: what pressure does`;
  if (figures.rounds.length === 0) {
    return (
      <Page title={title}>
        <NoRounds />
      </Page>
    );
  }
  return (
    <Page
      title={title}
      aside={
        <a className="button" href={writeAddress('method')}>
          How this is worked out
        </a>
      }
    >
      <section className="panel" aria-label="In one sentence">
        <DropSentence figures={figures} study={study} broken={broken} />
        <MixSwitch figures={figures} />
        <WorkingBar />
      </section>
      {study ? <WhatNext study={study} /> : null}
      {study ? <HowSure study={study} /> : null}
      {index ? <WeekByWeek index={index} /> : null}
      <BySpot figures={figures} index={index} rules={shooter.rules} ownSpots={ownSpots} />
      {mix === 'own' ? null : (
        <p className="notice">From here on all your shots count again, not free throws alone.</p>
      )}
      {index ? <TurnsTheScrew index={index} rounds={figures.rounds} /> : null}
      <WhatHangsOnIt hangs={hangs} />
      <NoPressureFelt figures={figures} study={study} book={book} />
      <MoreFromRecord figures={figures} study={study} forecasts={forecasts} />
      <section className="panel">
        <h2>Latest rounds</h2>
        <RoundList rounds={figures.rounds.slice(0, LATEST)} unfelt={figures.unfelt} book={book} />
        <a className="button" href={writeAddress('rounds')}>
          {figures.rounds.length > LATEST ? `All ${figures.rounds.length} rounds` : 'All rounds'}
        </a>
      </section>
    </Page>
  );
}
