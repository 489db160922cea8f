import type { Shooter } from '../log/book.ts';
import { shooterFigures } from '../store/figures.ts';
import { writeAddress } from '../store/places.ts';
import { useGym } from './gymContext.ts';
import { DropSentence } from './parts/DropSentence.tsx';
import { NoRounds } from './parts/NoRounds.tsx';
import { Page } from './parts/Page.tsx';
import { RoundList } from './parts/RoundList.tsx';
import { BothRates } from './result/BothRates.tsx';
import { BySpot } from './result/BySpot.tsx';
import { Misses } from './result/Misses.tsx';
import { OverTime } from './result/OverTime.tsx';

/** How many rounds stand under the result; all of them have a screen of their own. */
const LATEST = 10;

/** What pressure does to a shooter's shot: in a sentence, side by side, by spot and over time. */
export function ResultScreen({ shooter }: { readonly shooter: Shooter }) {
  const figures = useGym(({ book }) => shooterFigures(book, shooter.id));
  const ownSpots = useGym(({ book }) => book.ownSpots);
  const title = `${shooter.name}: what pressure does`;
  if (figures.rounds.length === 0) {
    return (
      <Page title={title}>
        <NoRounds />
      </Page>
    );
  }
  return (
    <Page title={title}>
      <section className="panel" aria-label="In one sentence">
        <DropSentence figures={figures} />
      </section>
      <BothRates figures={figures} />
      <BySpot figures={figures} rules={shooter.rules} ownSpots={ownSpots} />
      <Misses rounds={figures.rounds} />
      <OverTime figures={figures} />
      <section className="panel">
        <h2>Latest rounds</h2>
        <RoundList rounds={figures.rounds.slice(0, LATEST)} unfelt={figures.nerves.unfelt} />
        <a className="button" href={writeAddress('rounds')}>
          {figures.rounds.length > LATEST ? `All ${figures.rounds.length} rounds` : 'All rounds'}
        </a>
      </section>
    </Page>
  );
}
