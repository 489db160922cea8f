import { describe, expect, it } from 'vitest';

import type { Study } from '../../renderer/stats/study.ts';
import { noIndexWords, type Index } from '../../renderer/screens/studyParts.ts';
import { studyWords } from '../../renderer/screens/studyWords.ts';
import type { RecordRow } from '../tools/records.ts';
import { demoShooters, indexOf, knownFrom, sessionsOf, type Known } from '../tools/season.ts';

const [shrinking, steady] = demoShooters();

const wordsOf = ({ figures, study }: Known): string => inOne(studyWords(figures, study));
const wordsFor = (rows: readonly RecordRow[]): string => wordsOf(knownFrom(rows));
const inOne = ({ headline, more }: ReturnType<typeof studyWords>): string => [headline, ...more].join(' ');

/** The steady shooter's study, with another verdict and index. */
function told(
  verdict: Study['verdict'],
  overall: Partial<Index['overall']>,
  more: Partial<Study> = {},
): string {
  const index = indexOf(steady.study);
  return wordsOf({
    figures: steady.figures,
    study: {
      ...steady.study,
      verdict,
      index: { ...index, change: null, overall: { ...index.overall, ...overall } },
      ...more,
    },
  });
}

describe('the plain sentence before a verdict', () => {
  it('starts kindly before the first round', () => {
    expect(wordsFor([])).toBe(
      'No rounds yet. Start with a pair: the same card once relaxed and once under pressure.',
    );
  });

  it('asks for the other half of the comparison', () => {
    expect(wordsFor([{ makes: 11, attempts: 25 }])).toBe(
      '11 of 25 relaxed so far. Shoot the same card under pressure, and the two can be compared.',
    );
    expect(wordsFor([{ condition: 'pressured', makes: 9, attempts: 25 }])).toBe(
      '9 of 25 pressured so far. Shoot the same card relaxed, and the two can be compared.',
    );
  });

  it('compares nothing that is not alike', () => {
    const words = wordsFor([
      { round: 1, spot: 'top', makes: 11, attempts: 25 },
      { round: 2, condition: 'pressured', spot: 'left-wing', makes: 5, attempts: 25 },
    ]);
    expect(words).toContain('came from different spots');
    expect(words).not.toContain('%');
  });

  it('says too early, gives the figures, and says what is missing', () => {
    expect(wordsFor(sessionsOf(1, [46, 100], [41, 99]))).toBe(
      'Too early to say. So far 46 % relaxed and 41 % pressured, but with so few shots the difference could be luck. ' +
        '1 more pressured shot and 3 more sessions with both kinds of round, and a first verdict is due.',
    );
  });

  it('gives counts where a percentage would say too much', () => {
    expect(wordsFor(sessionsOf(1, [6, 10], [5, 10]))).toContain(
      'So far 6 of 10 relaxed and 5 of 10 pressured',
    );
  });

  it('does not let one good day decide, however many shots it had', () => {
    const words = wordsFor(sessionsOf(1, [300, 500], [200, 500]));
    expect(words).toContain('both in only 1 session, and one good or bad day must not decide');
    expect(words).toContain('3 more sessions with both kinds of round, and a first verdict is due');
    expect(words).not.toContain('You lose');
  });

  it('never had both in one session', () => {
    const words = wordsFor([
      { date: '2026-10-01', session: 'a', makes: 60, attempts: 120 },
      { date: '2026-10-02', session: 'b', condition: 'pressured', makes: 50, attempts: 120 },
    ]);
    expect(words).toContain('never both in one session');
    expect(words).toContain('4 more sessions');
  });

  it('says which pressured shots do not count', () => {
    const words = wordsFor([
      ...sessionsOf(1, [6, 10], [5, 10]),
      {
        date: '2026-10-01',
        session: 0,
        round: 3,
        condition: 'pressured',
        spot: 'left-wing',
        makes: 1,
        attempts: 5,
      },
    ]);
    expect(words).toContain('Only shots from places you also shoot relaxed count for it.');
  });

  it('names the same needs without a study, so that nothing flickers', () => {
    const { figures, study } = knownFrom(sessionsOf(2, [30, 50], [25, 50]));
    expect(studyWords(figures, null)).toEqual(studyWords(figures, study));
  });

  it('speaks of free throws where they alone were asked for', () => {
    const { figures, study } = knownFrom([
      ...sessionsOf(4, [15, 30], [12, 30]),
      {
        date: '2026-10-01',
        session: 0,
        round: 3,
        spot: 'free-throw',
        shot: 'free-throw',
        makes: 9,
        attempts: 10,
      },
    ]);
    const index = indexOf(study);
    const words = inOne(
      studyWords(figures, {
        ...study,
        verdict: { kind: 'none', needs: { pressured: 90, sessions: 3 } },
        have: { relaxed: { makes: 9, attempts: 10 }, pressured: { makes: 7, attempts: 10 }, sessions: 1 },
        index: { ...index, mix: [{ spot: 'free-throw', shot: 'free-throw', weight: 1 }] },
      }),
    );
    expect(words).toContain(
      'Too early to say for free throws alone. So far 9 of 10 relaxed and 7 of 10 pressured',
    );
    expect(words).toContain('90 more pressured shots');
  });
});

describe('the plain sentence without the model', () => {
  const { figures } = knownFrom(sessionsOf(5, [60, 100], [50, 100]));

  it('gives the bare figures and no verdict while it works', () => {
    expect(inOne(studyWords(figures, null))).toBe(
      '60 % relaxed, 50 % pressured so far. What that says about pressure is being worked out.',
    );
  });

  it('says plainly what the simple comparison says where the model cannot run', () => {
    // 300 of 500 and 250 of 500: Newcombe's method 10 gives 10 points, 4.8 to 15.1 at 90 % (from the formula).
    const words = inOne(studyWords(figures, null, true));
    expect(words).toContain('did not run on this device');
    expect(words).toContain(
      'about 10 points fewer under pressure, and anything from 5 to 15 points worse under pressure would fit',
    );
    expect(words).not.toContain('You lose');
  });
});

describe('the plain sentence where there is no index', () => {
  const mostlyUnseen: readonly RecordRow[] = sessionsOf(5, [12, 25], [11, 25]).concat(
    Array.from({ length: 5 }, (_, at) => ({
      date: `2026-10-0${at + 1}`,
      session: at,
      round: 3,
      spot: 'left-wing',
      makes: 20,
      attempts: 60,
    })),
  );

  it('says that most of the mix was never seen under pressure, and what to do', () => {
    expect(wordsFor(mostlyUnseen)).toBe(
      'No drop can be told yet. More than half of your usual shots were never taken under pressure: only 29 in 100 come ' +
        'from places you also shot that way. Shoot the cards you shoot relaxed under pressure too; a pair does just that.',
    );
  });

  it('says so besides what else is missing', () => {
    const fewer = wordsFor(mostlyUnseen.filter(({ session }) => session === 0));
    expect(fewer).toMatch(
      /^Too early to say\. .*a first verdict is due\. More than half of your usual shots/,
    );
  });

  it.each([
    ['no relaxed shot', 'Shoot a card relaxed'],
    ['no pressured shot', 'Shoot a card under pressure'],
    ['nothing of the mix', 'choose another mix'],
    ['too little of the mix under pressure', 'only 40 in 100'],
  ] as const)('has words for: %s', (reason, words) => {
    expect(noIndexWords({ kind: 'none', reason, seen: 0.4 }).join(' ')).toContain(words);
  });
});

describe('the verdict in words', () => {
  it('says what pressure takes, between which ends, how sure, and how it moved', () => {
    const { points, low, high } = indexOf(shrinking.study).overall;
    expect(wordsOf(shrinking)).toMatch(
      new RegExp(
        `^Over these \\d+ weeks, you lost about ${Math.round(points)} points under pressure, somewhere between ${Math.round(low)} and ` +
          `${Math.round(high)}\\. That is quite sure\\. By the latest week it costs you about \\d+ points?, [^.]+\\. That is \\d+ to \\d+ points less than in the first\\.$`,
      ),
    );
  });

  it('tells likely from sure', () => {
    expect(
      told({ kind: 'drop', sure: 'likely' }, { points: 6.2, low: 2.2, high: 9.8, probability: 0.97 }),
    ).toBe(
      'Over these 10 weeks, you lost about 6 points under pressure, somewhere between 2 and 10. That is likely, not yet sure.',
    );
    expect(told({ kind: 'drop', sure: 'likely' }, { points: 5, low: 0.3, high: 9 })).toContain(
      'somewhere between just above 0 and 9.',
    );
  });

  it('says where the pairs alone made it sure', () => {
    const words = told({ kind: 'drop', sure: 'clear' }, { points: 3, low: -1.2, high: 7, probability: 0.9 });
    expect(words).toContain('about 3 points under pressure, anything from 1 point better to 7 points worse.');
    expect(words).toContain('Your coin-ordered pairs have made that quite sure.');
    expect(told({ kind: 'drop', sure: 'clear' }, { points: 0.2, probability: 0.5 })).toMatch(
      /^Your coin-ordered pairs show a drop under pressure; all rounds together show next to none\./,
    );
  });

  it('says what pressure gives', () => {
    const gain = { points: -4.4, low: -7, high: -1.6, probability: 0.005 };
    expect(told({ kind: 'gain', sure: 'clear' }, gain)).toBe(
      'Over these 10 weeks, you made about 4 points more under pressure, somewhere between 2 and 7. That is quite sure.',
    );
  });

  it('says about the same', () => {
    expect(told({ kind: 'same' }, { points: 0.4, low: -1.6, high: 2.4 })).toBe(
      'About the same, relaxed or under pressure. The difference lies from 2 points better to 2 points worse under pressure.',
    );
  });

  it('tells no difference from luck where it cannot', () => {
    expect(told({ kind: 'unclear' }, { points: 3, low: -2.1, high: 8 })).toBe(
      'No difference that can be told from luck. It could be anything from 2 points better to 8 points worse under pressure. ' +
        'More rounds of both kinds make that narrower.',
    );
  });

  it('names the line where the drop is one of free throws alone', () => {
    const index = indexOf(steady.study);
    const study: Study = {
      ...steady.study,
      verdict: { kind: 'drop', sure: 'likely' },
      index: { ...index, mix: [{ spot: 'free-throw', shot: 'free-throw', weight: 1 }] },
    };
    expect(wordsOf({ figures: steady.figures, study })).toMatch(
      /^Over these \d+ weeks, at the free-throw line, you lost about/,
    );
  });

  it('warns where the pairs tell a different story', () => {
    const pairs = { ...steady.study.pairs, mean: 1.2 };
    expect(told({ kind: 'drop', sure: 'likely' }, { points: 8 }, { disagrees: true, pairs })).toContain(
      'Your coin-ordered pairs by themselves say 1 point and not 8 points: trust the pairs.',
    );
  });

  it('says that few pressured shots leave the estimate pulled towards 0', () => {
    expect(wordsFor(sessionsOf(5, [60, 100], [15, 30]))).toContain(
      'With 150 pressured shots the estimate is still pulled towards 0; from about 200 on the shots decide.',
    );
    expect(wordsOf(steady)).not.toContain('pulled');
  });

  it('never calls it choking', () => {
    expect([wordsOf(shrinking), wordsOf(steady)].join(' ')).not.toMatch(/chok/i);
  });
});
