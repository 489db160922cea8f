import {
  CLEAR_EVIDENCE,
  DRAWS,
  FAR_APART,
  LEAST_TO_COMPARE,
  LEAST_TO_CONTRADICT,
  LIKELY,
  MONTHS_OF_LOOKING,
  ONE_IN_EVER_LIKELY,
  READS_SHORT,
  READS_WHEN_CALLED,
  SHORT_RECORD,
  STILL_PULLED,
  TRUE_DROP,
} from '../../store/fixedNumbers.ts';
import { pairSpan } from '../../store/pairSpan.ts';
import type { Study } from '../../store/study.ts';
import { casesWords, dropSpan, pointsWords } from '../numberWords.ts';
import { evidenceWords } from '../result/evidenceWords.ts';
import type { Index } from '../studyParts.ts';
import { Part, Term, Yours } from './Part.tsx';

/** From the model to the number. */
export function WorkedOut({ index }: { readonly index: Index | null }) {
  return (
    <Part title="From the model to the number">
      <p>
        The pieces that fit your record best are found, and how far each could be off (the trade calls this
        Laplace’s approximation). Then come {DRAWS} shooters, drawn so that each would fit your record about
        as well. Each shoots your mix twice, relaxed and under pressure as you usually meet it. The mean of
        their drops is the number, the middle nine in ten are its span, and the share of them with a drop
        above 0 is the chance that there is one.
      </p>
      <p>
        The draws start from a number taken from the record itself, so the same record always gets the same
        answer. After a round there is a quick answer; once the device is at rest a thorough one learns how
        much things vary anew. It was checked against a slow sampler written independently, against two
        packages of the statistical language R (lme4 and mgcv), and on simulated shooters of known drop.
      </p>
      <p>
        Short records read small. In simulations a true drop of {TRUE_DROP} points reads about {READS_SHORT}{' '}
        after {SHORT_RECORD} and {SHORT_RECORD} shots, and {READS_WHEN_CALLED.join(' to ')} when it is first
        called; until about {STILL_PULLED} pressured shots the estimate is pulled towards 0.
      </p>
      {index ? <Yours>the draws start from the number {index.seed}.</Yours> : null}
    </Part>
  );
}

/** Pairs, and evidence that may be looked at every day. */
export function Coin({ study }: { readonly study: Study | null }) {
  const pairs = study?.pairsFair ? study.pairs : null;
  const span = pairs ? pairSpan(pairs) : null;
  return (
    <Part title="The coin, and looking every day">
      <dl className="terms">
        <Term word="Coin-ordered pairs">
          You shoot one card twice, and a coin decides whether relaxed or pressured comes first. Whatever else
          is going on, tiring, a good day, a stiff back, it falls on both sides alike. From {LEAST_TO_COMPARE}{' '}
          pairs on their own mean stands beside the model with its span. From {LEAST_TO_CONTRADICT} pairs on,
          where the two are further apart than {FAR_APART} times the pairs’ own error, the page says so, and
          the pairs are to be trusted.
          {pairs && pairs.mean !== null ? (
            <Yours>
              {pairs.n} {pairs.n === 1 ? 'pair' : 'pairs'}, {pointsWords(pairs.mean)}
              {span ? `, from ${dropSpan(span)}` : null}.
            </Yours>
          ) : null}
        </Term>
        <Term word="The exact test (sign-flip test)">
          If pressure did nothing, every pair’s difference could as well have come out the other way round. Of
          all ways the coins could have fallen, the test counts those with as large a drop in total. Nothing
          else is assumed.
          {pairs && pairs.p !== null ? <Yours>{casesWords(pairs.p)}.</Yours> : null}
        </Term>
        <Term word="Evidence for looking every day (an e-process)">
          A test that is looked at every day is fooled sooner or later. This one is not. It is kept like a
          score that starts at 1, rises when a pair shows a drop and falls when it does not. If pressure does
          nothing, it ever reaches {CLEAR_EVIDENCE} for at most 1 shooter in {CLEAR_EVIDENCE}, however often
          they look (Ville’s inequality; Turner, Ly and Grünwald, 2024, for relatives of it).
          {pairs && pairs.n > 0 && study ? <Yours>{evidenceWords(study.pairEvidence)}</Yours> : null}
        </Term>
        <Term word="The chance that there is a drop (a posterior probability)">
          It is honest each time you look: among shooters as the prior has them, of those who first see 95 in
          100, about 95 in 100 have a drop. But of simulated shooters without any drop who looked after every
          session for {MONTHS_OF_LOOKING} months, three times a week, 1 in {ONE_IN_EVER_LIKELY} saw it above{' '}
          {Math.round(100 * LIKELY)} at some time. Both are true; the second is why “quite sure” wants more.
        </Term>
      </dl>
    </Part>
  );
}
