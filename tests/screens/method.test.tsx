import type { ReactElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';

import { Compared } from '../../renderer/screens/method/Compared.tsx';
import { Consequences } from '../../renderer/screens/method/Consequences.tsx';
import { Limits } from '../../renderer/screens/method/Limits.tsx';
import { MixList } from '../../renderer/screens/method/MixKept.tsx';
import { mixOfToday, mixShares } from '../../renderer/screens/method/mixShares.ts';
import { ModelTerms } from '../../renderer/screens/method/ModelTerms.tsx';
import { pointsAtHalf } from '../../renderer/screens/method/pointsAtHalf.ts';
import { Sources } from '../../renderer/screens/method/Sources.tsx';
import { SOURCES } from '../../renderer/screens/method/sources.ts';
import { SpreadsLearnt } from '../../renderer/screens/method/SpreadsLearnt.tsx';
import { VerdictRules } from '../../renderer/screens/method/VerdictRules.tsx';
import { Coin, WorkedOut } from '../../renderer/screens/method/WorkedOut.tsx';
import { evidenceWords } from '../../renderer/screens/result/evidenceWords.ts';
import { demoShooters, indexOf, knownFrom } from '../tools/season.ts';

const [{ figures, study }] = demoShooters();
const index = indexOf(study);

const read = (element: ReactElement): string =>
  renderToStaticMarkup(element)
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ');

const page = (known: typeof study | null): string => {
  const own = known?.index.kind === 'index' ? known.index : null;
  return read(
    <>
      <Compared figures={figures} index={own} />
      <ModelTerms index={own} />
      <SpreadsLearnt index={own} />
      <WorkedOut index={own} />
      <Coin study={known} />
      <VerdictRules study={known} />
      <Consequences />
      <Limits />
    </>,
  );
};

describe('the page on how it is worked out', () => {
  it('stands without a study, and then claims nothing of the shooter’s own', () => {
    const text = page(null);
    expect(text).toContain('A drop and a gain are equally likely');
    expect(text).not.toContain('Yours:');
  });

  it('puts the shooter’s own values beside what it explains', () => {
    const text = page(study);
    for (const own of [
      'Yours: 967 of 1650 relaxed and 756 of 1650 under pressure as shot',
      'Yours: pressure adds −0.5',
      'Yours: 8 places in your mix.',
      'Yours: from the first week to the last the drop moved by −',
      `Yours: the draws start from the number ${index.seed}.`,
      'Yours: 90 pairs, 13 points, from 10 to 16.',
      'Yours: fewer than 1 case in 1000.',
      'Yours: Their evidence stands at odds of more than 1000 to 1',
      'Yours: 1650 pressured shots and 30 sessions that count; the chance of a drop is over 99 in 100: a drop, quite sure.',
    ]) {
      expect(text).toContain(own);
    }
    expect(text).toContain(`${pointsAtHalf(index.hyper.mean.day)} ${index.hyper.mean.day.toFixed(2)} ±`);
  });

  it('says of a record without an index that no drop can be told', () => {
    expect(read(<VerdictRules study={knownFrom([]).study} />)).toContain(
      'Yours: 0 pressured shots and 0 sessions that count; no drop can be told.',
    );
  });

  it('lists every source it leans on, and says what is from memory', () => {
    const listed = read(<Sources />);
    const cited = [
      ...page(null).matchAll(/([A-Z]\p{L}+)(?:,? (?:and|others|[A-Z])[^();]*?)?,? \(?(\d{4})\b/gu),
    ];
    expect(cited.length).toBeGreaterThan(5);
    for (const [whole, author = '', year] of cited) {
      const found = SOURCES.some((one) => one.authors.includes(author) && String(one.year) === year);
      expect(found, whole).toBe(true);
    }
    expect(listed).toContain('Low and others (2021).');
    expect(listed).toContain('From memory: volume and pages.');
  });
});

describe('the mix', () => {
  it('is listed by share, the largest first, and adds up', () => {
    const shares = mixShares(mixOfToday(figures.spots), figures.spots);
    expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(shares[0]).toMatchObject({ spot: 'free-throw', unseen: false });
    expect(read(<MixList shares={shares} />)).toMatch(/^ Free-throw line, free throw 36 % /);
  });

  it('says what was never shot under pressure', () => {
    const own = knownFrom([
      { round: 1, spot: 'top', makes: 3, attempts: 5 },
      { round: 2, condition: 'pressured', spot: 'left-wing', makes: 3, attempts: 5 },
    ]).figures;
    const shares = mixShares(mixOfToday(own.spots), own.spots);
    expect(shares).toEqual([{ spot: 'top', shot: 'catch', share: 1, unseen: true }]);
    expect(read(<MixList shares={shares} />)).toContain('never under pressure yet');
    expect(read(<MixList shares={[]} />)).toContain('No relaxed shot yet.');
  });
});

describe('the evidence in words', () => {
  it.each([
    [{ e: 12.3, highest: 14 }, 'Their evidence stands at odds of 12 to 1 against luck; from 20 to 1 on'],
    [{ e: 0.4, highest: 1 }, 'speaks for luck so far'],
    [{ e: 3, highest: 31 }, 'once stood at 31 to 1'],
    [{ e: 31, highest: 31 }, 'stands at odds of 31 to 1 against luck'],
  ])('%j', (evidence, words) => {
    expect(evidenceWords(evidence)).toContain(words);
  });
});
