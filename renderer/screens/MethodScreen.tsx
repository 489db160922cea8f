import type { Shooter } from '../log/book.ts';
import { shooterFigures } from '../store/figures.ts';
import { writeAddress } from '../store/places.ts';
import { useGym, useStudy } from './gymContext.ts';
import { Compared } from './method/Compared.tsx';
import { Consequences } from './method/Consequences.tsx';
import { ForecastRules } from './method/ForecastRules.tsx';
import { Hanging } from './method/Hanging.tsx';
import { Limits } from './method/Limits.tsx';
import { MixKept } from './method/MixKept.tsx';
import { ModelTerms } from './method/ModelTerms.tsx';
import { Sources } from './method/Sources.tsx';
import { SpreadsLearnt } from './method/SpreadsLearnt.tsx';
import { VerdictRules } from './method/VerdictRules.tsx';
import { Coin, WorkedOut } from './method/WorkedOut.tsx';
import { Page } from './parts/Page.tsx';

/** How the drop is worked out, in plain words, with the shooter's own values beside them. */
export function MethodScreen({ shooter }: { readonly shooter: Shooter }) {
  const figures = useGym(({ book }) => shooterFigures(book, shooter.id));
  const study = useStudy((state) => state.study);
  const forecasts = useStudy((state) => state.forecasts);
  const hangs = useStudy((state) => state.hangs);
  const index = study?.index.kind === 'index' ? study.index : null;
  return (
    <Page
      title="How this is worked out"
      aside={
        <a className="button" href={writeAddress('result')}>
          The result
        </a>
      }
    >
      <Compared figures={figures} index={index} />
      <MixKept shooter={shooter} figures={figures} />
      <ModelTerms index={index} />
      <SpreadsLearnt index={index} />
      <WorkedOut index={index} />
      <Coin study={study} />
      <VerdictRules study={study} />
      <Hanging hangs={hangs} />
      <ForecastRules score={forecasts} />
      <Consequences />
      <Limits />
      <Sources />
    </Page>
  );
}
