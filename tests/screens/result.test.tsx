import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';

import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { EMPTY_BOOK, type Round } from '../../renderer/log/book.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { DropSentence } from '../../renderer/screens/parts/DropSentence.tsx';
import { RoundList } from '../../renderer/screens/parts/RoundList.tsx';
import { BothRates } from '../../renderer/screens/result/BothRates.tsx';
import { BySpot } from '../../renderer/screens/result/BySpot.tsx';
import { OverTime } from '../../renderer/screens/result/OverTime.tsx';
import { shooterFigures } from '../../renderer/store/figures.ts';
import { bookFromFile, GOLDEN, recordFile } from '../tools/records.ts';

const season = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
const [demoShooter = ''] = season.shooters.keys();
const demo = shooterFigures(season, demoShooter);

const golden = (() => {
  const book = bookFromFile(recordFile(GOLDEN));
  return shooterFigures(book, [...book.shooters.keys()][0] ?? '');
})();

/** What a person reads, tags taken out. */
const textOf = (markup: string): string =>
  markup
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();
const count = (text: string, part: string): number => text.split(part).length - 1;

describe('the parts of the result', () => {
  it('put the two figures beside the sentence, and say once what a span means', () => {
    const text = textOf(renderToStaticMarkup(<DropSentence figures={golden} />));
    expect(text).toContain('Relaxed 60 % 15 of 25 · 44 to 75 %');
    expect(text).toContain('Pressured 40 % 10 of 25 · 25 to 56 %');
    expect(text).toContain('Too early to say.');
    expect(count(text, 'nine times in ten')).toBe(1);
  });

  it('show no empty figures before the first round', () => {
    const text = textOf(
      renderToStaticMarkup(<DropSentence figures={shooterFigures(EMPTY_BOOK, 'nobody')} />),
    );
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

  it('write a count instead of a percentage where the shots are few', () => {
    const rows = [...GOLDEN, { round: 3, spot: 'left-wing', makes: 4, attempts: 5 }];
    const book = bookFromFile(recordFile(rows));
    const figures = shooterFigures(book, [...book.shooters.keys()][0] ?? '');
    const markup = renderToStaticMarkup(<BySpot figures={figures} rules="NBA" ownSpots={new Map()} />);
    const [drawing = ''] = markup.split('<details');
    expect(textOf(drawing)).toContain('4 of 5');
    expect(textOf(drawing)).toContain('60 %');
    expect(textOf(drawing)).not.toContain('80 %');
  });

  it('keep a spot in the table whose place nobody knows, and draw it once it has one', () => {
    const book = bookFromFile(recordFile([{ spot: 'the crack in the floor', makes: 3, attempts: 5 }]));
    const figures = shooterFigures(book, [...book.shooters.keys()][0] ?? '');
    const drawn = (ownSpots: ReadonlyMap<string, { x: number; y: number }>) =>
      renderToStaticMarkup(<BySpot figures={figures} rules="FIBA" ownSpots={ownSpots} />);
    const unknown = drawn(new Map());
    expect(count(unknown, 'spot-card')).toBe(0);
    expect(textOf(unknown)).toContain('the crack in the floor, catch-and-shoot 3 of 5');
    expect(textOf(unknown)).toContain('not known');
    expect(count(drawn(new Map([['the crack in the floor', { x: 1, y: 5 }]])), 'spot-card')).toBe(1);
  });

  it('draw a mark for each session with both conditions, and put the numbers in a table', () => {
    const markup = renderToStaticMarkup(<OverTime figures={demo} />);
    const [drawing = '', table = ''] = markup.split('<details');
    for (const kind of ['relaxed', 'pressured', 'drop']) {
      expect(count(drawing, `class="span thin ${kind}"`)).toBe(demo.sessions.length);
    }
    expect(count(table, '<tr')).toBe(demo.sessions.length + 1);
  });

  it('leave a week without shots empty', () => {
    const book = bookFromFile(
      recordFile([
        { date: '2026-10-05', session: 'a', makes: 3, attempts: 5 },
        { date: '2026-10-26', session: 'b', makes: 3, attempts: 5 },
      ]),
    );
    const figures = shooterFigures(book, [...book.shooters.keys()][0] ?? '');
    const markup = renderToStaticMarkup(<OverTime figures={figures} />);
    expect(count(markup, 'class="span thin relaxed"')).toBe(2);
    for (const monday of ['5 Oct', '12 Oct', '19 Oct', '26 Oct']) expect(textOf(markup)).toContain(monday);
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

  it('marks a pressured round in which the nerves did not rise', () => {
    expect(listed(pressuredRound, true)).toContain('nerves did not rise');
    expect(listed(pressuredRound)).not.toContain('nerves did not rise');
  });
});
