import { CLEAR_EVIDENCE, LIKELY, MONTHS_OF_LOOKING, ONE_IN_EVER_LIKELY } from '../../store/fixedNumbers.ts';
import { pairSpan } from '../../store/pairSpan.ts';
import type { Study } from '../../store/study.ts';
import { casesWords, chanceWords, endWords, partPercent, pointsWords } from '../numberWords.ts';
import { upperFirst } from '../parts/upperFirst.ts';
import { indexToTell, type Index } from '../studyParts.ts';
import { DropsSideBySide } from './DropsSideBySide.tsx';
import { evidenceWords } from './evidenceWords.ts';

/** How far the sentence is to be trusted: chances, the pairs beside the model, and what looking every day does. */
export function HowSure({ study }: { readonly study: Study }) {
  const { index } = study;
  if (index.kind === 'none') return null;
  const body = <Sureness study={study} index={index} />;
  return (
    <section className="panel" aria-label="How sure">
      <h2>How sure</h2>
      {indexToTell(study) ? (
        body
      ) : (
        <>
          <p className="lead">
            Not sure at all yet. With a record this short, what was believed before the first shot still
            decides most of the answer.
          </p>
          <details className="behind">
            <summary>What the numbers say so far</summary>
            <div className="stack">{body}</div>
          </details>
        </>
      )}
    </section>
  );
}

function Sureness({ study, index }: { readonly study: Study; readonly index: Index }) {
  const { pairs, pairsFair } = study;
  const fair = pairsFair && pairs.n > 0;
  const span = fair ? pairSpan(pairs) : null;
  return (
    <>
      <Chances index={index} />
      <DropsSideBySide
        label="What all rounds say"
        behind="The drop in numbers"
        rows={[
          { name: 'All rounds', ...index.overall },
          ...(span ? [{ name: 'Coin-ordered pairs alone', ...span }] : []),
        ]}
      />
      {study.disagrees && pairs.mean !== null ? (
        <div className="notice warn">
          <p>
            <strong>Two different stories.</strong> The pairs by themselves say {pointsWords(pairs.mean)}, all
            rounds together {pointsWords(index.overall.points)}. Trust the pairs: the coin makes them fair,
            whatever the rest gets wrong.
          </p>
        </div>
      ) : null}
      {fair ? <PairWords study={study} /> : <NoPairs pairs={pairs} />}
      <p>
        Looking every day has a price. Of shooters without any drop who look after every session for{' '}
        {MONTHS_OF_LOOKING} months, 1 in {ONE_IN_EVER_LIKELY} sees the first chance above{' '}
        {Math.round(100 * LIKELY)} in 100 at some time. The evidence of the pairs is made for looking: it
        fools at most 1 such shooter in {CLEAR_EVIDENCE}.
      </p>
      <p>{seenWords(index)}</p>
      {index.notes.length === 0 ? null : (
        <details className="behind">
          <summary>What else to know about these numbers</summary>
          <ul>
            {index.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Chances({ index: { overall, ratio } }: { readonly index: Index }) {
  return (
    <dl className="chances">
      <div>
        <dt>is the chance that there is a drop at all</dt>
        <dd className="figure">{chanceWords(overall.probability)}</dd>
      </div>
      <div>
        <dt>is the chance that it is more than 2 points</dt>
        <dd className="figure">{chanceWords(overall.probabilityOver2)}</dd>
      </div>
      {ratio ? (
        <div>
          <dt>
            makes under pressure for every 100 relaxed ones;{' '}
            {endWords(100 * ratio.low, 100 * ratio.high).join(' to ')}
          </dt>
          <dd className="figure">{Math.round(100 * ratio.value)}</dd>
        </div>
      ) : null}
    </dl>
  );
}

function PairWords({ study: { pairs, pairEvidence } }: { readonly study: Study }) {
  const { n, mean, p, leftOut, stopped } = pairs;
  if (mean === null || p === null) return null;
  return (
    <>
      <p>
        {n === 1 ? 'One pair' : `${n} pairs`}, with the order tossed by the coin, {n === 1 ? 'says' : 'say'}{' '}
        {pointsWords(mean)} by {n === 1 ? 'itself' : 'themselves'}. If pressure did nothing, the coin alone
        would bring a drop as large or larger in {casesWords(p)}.
        {leftOut > 0
          ? ` ${leftOut} more ${leftOut === 1 ? 'is' : 'are'} left out: not both rounds were played out to a length that was fixed before${stopped > 0 ? `; ${stopped} you ended early` : ''}.`
          : null}
      </p>
      <p>{evidenceWords(pairEvidence)}</p>
    </>
  );
}

function NoPairs({ pairs: { n, stopped } }: Pick<Study, 'pairs'>) {
  if (n > 0 && stopped > 0) {
    return (
      <p>
        Your {n} pairs are not counted as fair: you ended {stopped} more early. Whoever ends the pairs that go
        badly keeps the ones that go well. Play pairs to their end, and they will count again.
      </p>
    );
  }
  return (
    <p>
      There are no coin-ordered pairs yet. They are the fairest evidence there is: no tiredness, no good day
      and no choice of yours can lean on the coin.
    </p>
  );
}

function seenWords({ seen, places }: Index): string {
  if (places.every(({ raw }) => raw.pressured.attempts > 0)) {
    return 'Every shot of your mix was also taken under pressure.';
  }
  return `${upperFirst(partPercent(seen))} of your mix comes from places you also shot under pressure; for the rest the other places stand in.`;
}
