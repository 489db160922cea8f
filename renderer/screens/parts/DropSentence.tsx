import { Glyph } from '../../charts/Glyph.tsx';
import type { Figures } from '../../store/figures.ts';
import { dropWords, percent, SPAN_WORDS } from '../dropWords.ts';

/** How the shooter stands: the two figures, the plain sentence, and what its span means. */
export function DropSentence({ figures }: { readonly figures: Figures }) {
  const { headline, more } = dropWords(figures);
  const empty = figures.relaxed.attempts + figures.pressured.attempts === 0;
  return (
    <div className="drop-sentence">
      {empty ? null : (
        <dl className="rates">
          <BigRate condition="relaxed" figures={figures} />
          <BigRate condition="pressured" figures={figures} />
        </dl>
      )}
      <p className="drop-headline">{headline}</p>
      {more.length === 0 ? null : <p className="lead">{more.join(' ')}</p>}
      {figures.drop ? <p className="quiet">{SPAN_WORDS}</p> : null}
    </div>
  );
}

interface BigRateProps {
  readonly condition: 'relaxed' | 'pressured';
  readonly figures: Figures;
}

function BigRate({ condition, figures }: BigRateProps) {
  const { makes, attempts, rate } = figures[condition];
  return (
    <div className={`big-rate ${condition}`}>
      <dt>
        <svg className="glyph" viewBox="-10 -10 20 20" aria-hidden="true">
          <Glyph kind={condition} x={0} y={0} size={8} />
        </svg>{' '}
        {condition === 'relaxed' ? 'Relaxed' : 'Pressured'}
      </dt>
      <dd className="figure">{percent({ makes, attempts })}</dd>
      <dd className="quiet">
        {rate
          ? `${makes} of ${attempts}, ${Math.round(100 * rate.low)} to ${Math.round(100 * rate.high)} %`
          : 'no shots yet'}
      </dd>
    </div>
  );
}
