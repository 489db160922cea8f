import { FEW_SHOTS } from '../../charts/fewShots.ts';
import { GlyphIcon } from '../../charts/Glyph.tsx';
import type { Figures } from '../../store/figures.ts';
import type { Study, StudyState } from '../../store/study.ts';
import { countWords, percent, percentSpan, rateSpan } from '../numberWords.ts';
import { atTheLine, indexToTell, type Index } from '../studyParts.ts';
import { SPAN_WORDS, studyWords } from '../studyWords.ts';

interface Props extends Pick<StudyState, 'study' | 'broken'> {
  readonly figures: Figures;
}

/**
 * How the shooter stands: the two figures, the plain sentence, and what its span means. Once there is a verdict the figures
 * are those it rests on, for one mix of shots in both conditions, so that they differ by the very drop; before, bare counts.
 */
export function DropSentence({ figures, study, broken }: Props) {
  const { headline, more } = studyWords(figures, study, broken);
  const index = indexToTell(study);
  const told = study && index ? { index, shot: atTheLine(index) ? study.have : figures } : null;
  const empty = figures.relaxed.attempts + figures.pressured.attempts === 0;
  return (
    <div className="drop-sentence" aria-busy={study === null && !broken}>
      {empty ? null : (
        <dl className="rates">
          <BigRate condition="relaxed" rated={figures.relaxed} told={told} />
          <BigRate condition="pressured" rated={figures.pressured} told={told} />
        </dl>
      )}
      <p className="drop-headline">{headline}</p>
      {more.length === 0 ? null : <p className="lead">{more.join(' ')}</p>}
      {figures.drop ? (
        <p className="quiet">
          {index
            ? 'Both percentages are for the same mix of shots, warm, not yet tired, on a usual day. '
            : null}
          {SPAN_WORDS}
        </p>
      ) : null}
    </div>
  );
}

interface BigRateProps {
  readonly condition: 'relaxed' | 'pressured';
  readonly rated: Figures['relaxed'];
  /** What the verdict rests on, and the shots of it; null before there is one. */
  readonly told: {
    readonly index: Index;
    readonly shot: Pick<Study['have'], 'relaxed' | 'pressured'>;
  } | null;
}

function BigRate({ condition, rated, told }: BigRateProps) {
  return (
    <div className={`big-rate ${condition}`}>
      <dt>
        <GlyphIcon kind={condition} /> {condition === 'relaxed' ? 'Relaxed' : 'Pressured'}
      </dt>
      <dd className="figure">{told ? `${Math.round(told.index[condition])} %` : countedRate(rated)}</dd>
      {told ? (
        <dd className="quiet">
          <span>{percentSpan(told.index.spans[condition])}</span> ·{' '}
          <span>as shot: {countWords(told.shot[condition])}</span>
        </dd>
      ) : rated.rate ? (
        <dd className="quiet">
          <span>{countWords(rated)}</span> · <span>{rateSpan(rated)}</span>
        </dd>
      ) : null}
    </div>
  );
}

function countedRate(rated: Figures['relaxed']): string {
  if (!rated.rate) return 'none yet';
  return rated.attempts < FEW_SHOTS ? countWords(rated) : percent(rated);
}
