import type { Figures } from '../../store/figures.ts';
import type { ForecastScore } from '../../stats/forecastScore.ts';
import type { Study } from '../../store/study.ts';
import { BothRates } from './BothRates.tsx';
import { Forecasts } from './Forecasts.tsx';
import { HotHand } from './HotHand.tsx';
import { Misses } from './Misses.tsx';
import { OverTime } from './OverTime.tsx';

interface Props {
  readonly figures: Figures;
  readonly study: Study | null;
  readonly forecasts: ForecastScore | null;
}

/** What else the record tells, each to be opened when it is wanted. */
export function MoreFromRecord({ figures, study, forecasts }: Props) {
  return (
    <section className="panel more">
      <h2>More from your record</h2>
      <div>
        <BothRates figures={figures} />
        <OverTime figures={figures} />
        {study ? <HotHand split={study.afterMake} /> : null}
        <Misses rounds={figures.rounds} />
        <Forecasts score={forecasts} />
      </div>
    </section>
  );
}
