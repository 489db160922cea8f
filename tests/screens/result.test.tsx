import type { ReactElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';

import type { Round } from '../../renderer/log/book.ts';
import { percentSpan, pointsWords } from '../../renderer/screens/numberWords.ts';
import { DropSentence } from '../../renderer/screens/parts/DropSentence.tsx';
import { RoundList } from '../../renderer/screens/parts/RoundList.tsx';
import { Working } from '../../renderer/screens/parts/WorkingBar.tsx';
import { BothRates } from '../../renderer/screens/result/BothRates.tsx';
import { BySpot } from '../../renderer/screens/result/BySpot.tsx';
import { HowSure } from '../../renderer/screens/result/HowSure.tsx';
import { NoPressureFelt } from '../../renderer/screens/result/NoPressureFelt.tsx';
import { OverTime } from '../../renderer/screens/result/OverTime.tsx';
import type { Study } from '../../renderer/store/study.ts';
import { GOLDEN, type RecordRow } from '../tools/records.ts';
import { demoShooters, indexOf, knownFrom, sessionsOf } from '../tools/season.ts';

const [{ figures: demo, study }, steady] = demoShooters();
const { figures: golden } = knownFrom(GOLDEN);
const figuresFrom = (rows: readonly RecordRow[]) => knownFrom(rows).figures;

/** What a person reads, tags taken out. */
const textOf = (markup: string): string =>
  markup
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();
const read = (element: ReactElement): string => textOf(renderToStaticMarkup(element));
const count = (text: string, part: string): number => text.split(part).length - 1;

describe('the parts of the result', () => {
  it('put the two figures beside the sentence, and say once what a span means', () => {
    const text = read(<DropSentence figures={golden} study={null} broken={false} />);
    expect(text).toContain('Relaxed 60 % 15 of 25 · 44 to 75 %');
    expect(text).toContain('Pressured 40 % 10 of 25 · 25 to 56 %');
    expect(text).toContain('Too early to say.');
    expect(count(text, 'nine times in ten')).toBe(1);
  });

  it('say once that nothing was shot one way', () => {
    const figures = figuresFrom([{ makes: 15, attempts: 25 }]);
    const text = read(<DropSentence figures={figures} study={null} broken={false} />);
    expect(text).toContain('Pressured none yet 15 of 25 relaxed so far.');
    expect(text).not.toContain('no shots');
  });

  it('show no empty figures before the first round', () => {
    const text = read(<DropSentence figures={figuresFrom([])} study={null} broken={false} />);
    expect(text).toBe(
      'No rounds yet. Start with a pair: the same card once relaxed and once under pressure.',
    );
  });

  it('draw every estimate with its interval, and tell conditions apart by shape too', () => {
    const markup = renderToStaticMarkup(<BothRates figures={golden} />);
    for (const kind of ['relaxed', 'pressured', 'drop']) expect(markup).toContain(`class="span ${kind}"`);
    expect(markup).toContain('<circle class="mark relaxed"');
    expect(markup).toContain('<path class="mark pressured"');
    expect(textOf(markup)).toContain('Drop 20 points −3 to 40');
    expect(textOf(markup)).toContain(
      'All shots thrown together, whatever the spot: 20 points, from −7 to 43 at 95 in 100.',
    );
  });

  it('have the numbers of both drawings in a table', () => {
    const [, table = ''] = renderToStaticMarkup(<BothRates figures={figuresFrom(GOLDEN)} />).split(
      'aria-label="As shot, in numbers"',
    );
    expect(textOf(table)).toMatch(
      /Relaxed 15 of 25 60 % \d+ to \d+ % Pressured 10 of 25 40 % \d+ to \d+ % Drop, matched by spot 20 points −3 to 40/,
    );
  });

  it('write a count instead of a percentage where the shots are few', () => {
    const rows = [...GOLDEN, { round: 3, spot: 'left-wing', makes: 4, attempts: 5 }];
    const markup = renderToStaticMarkup(
      <BySpot figures={figuresFrom(rows)} index={null} rules="NBA" ownSpots={new Map()} />,
    );
    const [drawing = ''] = markup.split('<details');
    expect(textOf(drawing)).toContain('4 of 5');
    expect(textOf(drawing)).toContain('60 %');
    expect(textOf(drawing)).not.toContain('80 %');
  });

  it('keep a spot in the table whose place nobody knows, and draw it once it has one', () => {
    const figures = figuresFrom([{ spot: 'the crack in the floor', makes: 3, attempts: 5 }]);
    const drawn = (ownSpots: ReadonlyMap<string, { x: number; y: number }>) =>
      renderToStaticMarkup(<BySpot figures={figures} index={null} rules="FIBA" ownSpots={ownSpots} />);
    const unknown = drawn(new Map());
    expect(count(unknown, 'spot-card')).toBe(0);
    expect(textOf(unknown)).toContain('the crack in the floor, catch-and-shoot 3 of 5');
    expect(textOf(unknown)).toContain('not known');
    expect(count(drawn(new Map([['the crack in the floor', { x: 1, y: 5 }]])), 'spot-card')).toBe(1);
  });

  it('draw a mark for each session with both conditions, and put the numbers in a table', () => {
    const markup = renderToStaticMarkup(<OverTime figures={demo} />);
    const [, drawing = '', table = ''] = markup.split('<details');
    for (const kind of ['relaxed', 'pressured', 'drop']) {
      expect(count(drawing, `class="span thin ${kind}"`)).toBe(demo.sessions.length);
    }
    expect(count(table, '<tr')).toBe(demo.sessions.length + 1);
  });

  it('leave a week without shots empty', () => {
    const figures = figuresFrom([
      { date: '2026-10-05', session: 'a', makes: 3, attempts: 5 },
      { date: '2026-10-26', session: 'b', makes: 3, attempts: 5 },
    ]);
    const markup = renderToStaticMarkup(<OverTime figures={figures} />);
    expect(count(markup, 'class="span thin relaxed"')).toBe(2);
    for (const monday of ['5 Oct', '12 Oct', '19 Oct', '26 Oct']) expect(textOf(markup)).toContain(monday);
  });
});

describe('the sentence with the model', () => {
  it('shows the two percentages that differ by the drop, and the counts as shot beneath', () => {
    const index = indexOf(study);
    const text = read(<DropSentence figures={demo} study={study} broken={false} />);
    expect(text).toContain(
      `Relaxed ${Math.round(index.relaxed)} % ${percentSpan(index.spans.relaxed)} · as shot: ${demo.relaxed.makes} of`,
    );
    expect(text).toContain(
      `Pressured ${Math.round(index.pressured)} % ${percentSpan(index.spans.pressured)} · as shot: ${demo.pressured.makes} of`,
    );
    expect(index.relaxed - index.pressured).toBeCloseTo(index.overall.points, 8);
    expect(text).toContain('for the same mix of shots');
  });

  it('counts free throws alone where they alone were asked for', () => {
    const line: Study = {
      ...study,
      have: { ...study.have, relaxed: { makes: 450, attempts: 600 } },
      index: { ...indexOf(study), mix: [{ spot: 'free-throw', shot: 'free-throw', weight: 1 }] },
    };
    expect(read(<DropSentence figures={demo} study={line} broken={false} />)).toContain(
      'as shot: 450 of 600',
    );
  });

  it('is marked as not finished until the first answer has come, or none will', () => {
    const busy = (answer: Study | null, broken: boolean): boolean =>
      renderToStaticMarkup(<DropSentence figures={demo} study={answer} broken={broken} />).includes(
        'aria-busy="true"',
      );
    expect([busy(null, false), busy(null, true), busy(study, false)]).toEqual([true, false, false]);
  });

  it('says that it works, and how far it is', () => {
    const markup = renderToStaticMarkup(<Working share={0.4} />);
    expect(textOf(markup)).toBe('Working the numbers out anew …');
    expect(markup).toContain('value="0.4"');
  });
});

describe('how sure', () => {
  it('gives the chances, the share that is left, and the pairs beside all rounds', () => {
    const text = read(<HowSure study={study} />);
    expect(text).toContain('chance that there is a drop at all over 99 in 100');
    expect(text).toContain('that it is more than 2 points over 99 in 100');
    expect(text).toMatch(/makes under pressure for every 100 relaxed ones; \d+ to \d+ 7\d/);
    expect(text).toMatch(/All rounds 1[23] points .* Coin-ordered pairs alone 13 points/);
    expect(text).toContain('90 pairs, with the order tossed by the coin, say 13 points by themselves.');
    expect(text).toContain('as large or larger in fewer than 1 case in 1000');
    expect(text).toContain(
      'at odds of more than 1000 to 1 against luck; from 20 to 1 on a drop is called clear',
    );
    expect(text).toContain('1 in 7 sees the first chance above 95 in 100 at some time');
    expect(text).toContain('Every shot of your mix was also taken under pressure.');
    expect(text).not.toContain('Two different stories');
  });

  it('has the numbers of the drawing in a table', () => {
    const [, table = ''] = renderToStaticMarkup(<HowSure study={study} />).split(
      'aria-label="The drop in numbers"',
    );
    expect(textOf(table)).toMatch(
      /Points lost Span All rounds 1[23] points \d+ to \d+ Coin-ordered pairs alone 13 points \d+ to \d+/,
    );
  });

  it('warns where pairs and model tell different stories', () => {
    const pairs = { ...study.pairs, mean: 2.2 };
    const text = read(<HowSure study={{ ...study, pairs, disagrees: true }} />);
    expect(text).toMatch(
      /Two different stories\. The pairs by themselves say 2 points, all rounds together 1[23] points\. Trust the pairs/,
    );
  });

  it('does without pairs, and leaves out ones that look untossed', () => {
    const without = read(<HowSure study={knownFrom(sessionsOf(5, [60, 100], [50, 100])).study} />);
    expect(without).toContain('There are no coin-ordered pairs yet.');
    expect(without).not.toContain('Coin-ordered pairs alone');
    expect(read(<HowSure study={{ ...study, pairsFair: false }} />)).toContain(
      'There are no coin-ordered pairs yet.',
    );
  });

  it('draws no span for a handful of pairs', () => {
    const text = read(<HowSure study={{ ...study, pairs: { ...study.pairs, n: 7 } }} />);
    expect(text).toContain('7 pairs');
    expect(text).not.toContain('Coin-ordered pairs alone');
  });

  it('folds the numbers of a record that is too short, and says nothing without an index', () => {
    const short = renderToStaticMarkup(<HowSure study={knownFrom(GOLDEN).study} />);
    const [shown = '', folded = ''] = short.split('<details');
    expect(textOf(shown)).toContain('Not sure at all yet.');
    expect(textOf(shown)).not.toContain('in 100');
    expect(textOf(folded)).toContain('chance that there is a drop at all 7');
    expect(read(<HowSure study={knownFrom([]).study} />)).toBe('');
  });
});

describe('the rounds in which no pressure was felt', () => {
  it('stand apart, with the drop with and without them', () => {
    const { felt } = demo;
    const markup = renderToStaticMarkup(<NoPressureFelt figures={demo} study={study} />);
    const text = textOf(markup);
    const rated = felt.felt.rounds.length + felt.unfelt.rounds.length;
    expect(text).toContain(
      `In ${felt.unfelt.rounds.length} of ${rated} pressured rounds your nerves did not rise above your usual relaxed 2 of 10`,
    );
    expect(text).toContain(
      `you made ${felt.unfelt.makes} of ${felt.unfelt.attempts}, in the ones where nerves rose`,
    );
    const { overall } = indexOf(study);
    const without = study.felt.dropWithout?.points ?? Number.NaN;
    expect(text).toMatch(
      new RegExp(
        `All pressured rounds ${pointsWords(overall.points)} .* Without these ${pointsWords(without)}`,
      ),
    );
    expect(markup).toContain('aria-label="With and without these rounds, in numbers"');
    expect(text).toContain('pick the rounds by how you felt');
    expect(count(markup, 'class="round-row"')).toBe(felt.unfelt.rounds.length);
  });

  it('are listed down to the latest thirty, and it is said where the others are', () => {
    const unfelt = new Set(demo.rounds.slice(0, 40).map(({ id }) => id));
    const markup = renderToStaticMarkup(<NoPressureFelt figures={{ ...demo, unfelt }} study={null} />);
    expect(count(markup, 'class="round-row"')).toBe(30);
    expect(textOf(markup)).toContain('The 40 rounds without pressure');
    expect(textOf(markup)).toContain('These are the latest 30.');
  });

  it('are not there where nerves always rose', () => {
    expect(read(<NoPressureFelt figures={steady.figures} study={steady.study} />)).toBe(
      'Did pressure arrive? Your nerves rose above your usual relaxed 2 of 10 in all 60 pressured rounds.',
    );
  });

  it('are there before the model has answered, without its numbers', () => {
    const text = read(<NoPressureFelt figures={demo} study={null} />);
    expect(text).toContain('no pressure was felt');
    expect(text).not.toContain('Without these');
  });

  it('cannot be told without ratings', () => {
    expect(read(<NoPressureFelt figures={golden} study={null} />)).toContain(
      'Rate your nerves before at least three relaxed rounds',
    );
    expect(read(<NoPressureFelt figures={figuresFrom([{ makes: 3, attempts: 5 }])} study={null} />)).toBe('');
  });
});

describe('the list of rounds', () => {
  const listed = (round: Round, unfelt = false): string =>
    textOf(renderToStaticMarkup(<RoundList rounds={[round]} unfelt={new Set(unfelt ? [round.id] : [])} />));
  const pressuredRound = demo.rounds.find(({ condition }) => condition === 'pressured') as Round;
  const marked = (makes: number, change: Partial<Round> = {}): Round => ({
    ...pressuredRound,
    ...change,
    entries: [{ kind: 'count', id: 'e', at: 0, stop: 0, makes, attempts: 5 }],
    pressure: pressuredRound.pressure && { ...pressuredRound.pressure, mark: { makes: 4, chance: 0.5 } },
  });

  it('says the day, the condition, the order in the pair, the card and what was made', () => {
    const text = listed(demo.rounds[0] as Round);
    expect(text).toMatch(/^[A-Z][a-z]{2}, \d+ [A-Z][a-z]+ 2026 · round \d/);
    expect(text).toMatch(/(relaxed|pressured) · (first|second) of a pair/);
    expect(text).toMatch(/nerves \d+ before, \d+ during/);
    expect(text).toMatch(/\d+ of \d+$/);
  });

  it.each([
    ['beaten', marked(4), 'mark 4 beaten'],
    ['short', marked(1), 'mark 4 missed by 3'],
    ['stopped', marked(1, { ending: 'stopped' }), 'mark 4 off: ended early'],
    ['broken off', marked(4, { ending: 'interrupted' }), 'mark 4 off: interrupted'],
    ['left', marked(1, { state: 'paused', ending: null }), 'mark 4, not played out'],
  ])('gives the verdict on the mark: %s', (_, round, words) => {
    expect(listed(round)).toContain(words);
  });

  it('marks a pressured round in which no pressure was felt', () => {
    expect(listed(pressuredRound, true)).toContain('no pressure was felt');
    expect(listed(pressuredRound)).not.toContain('no pressure was felt');
  });
});
