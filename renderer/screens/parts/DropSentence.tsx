import { FEW_SHOTS } from '../../charts/fewShots.ts';
import { GlyphIcon } from '../../charts/Glyph.tsx';
import type { Figures } from '../../store/figures.ts';
import { dropWords, SPAN_WORDS } from '../dropWords.ts';
import { countWords, percent, rateSpan } from '../numberWords.ts';

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
  const rated = figures[condition];
  return (
    <div className={`big-rate ${condition}`}>
      <dt>
        <GlyphIcon kind={condition} /> {condition === 'relaxed' ? 'Relaxed' : 'Pressured'}
      </dt>
      <dd className="figure">{rated.attempts < FEW_SHOTS ? countWords(rated) : percent(rated)}</dd>
      <dd className="quiet">
        {rated.rate ? (
          <>
            <span>{countWords(rated)}</span> · <span>{rateSpan(rated)}</span>
          </>
        ) : (
          'no shots yet'
        )}
      </dd>
    </div>
  );
}
