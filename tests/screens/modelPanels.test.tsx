import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';

import { DoorsContext, type Doors } from '../../renderer/screens/gymContext.ts';
import { BySpot } from '../../renderer/screens/result/BySpot.tsx';
import { changeWords } from '../../renderer/screens/result/changeWords.ts';
import { HotHand } from '../../renderer/screens/result/HotHand.tsx';
import { TurnsTheScrew } from '../../renderer/screens/result/TurnsTheScrew.tsx';
import { WeekByWeek } from '../../renderer/screens/result/WeekByWeek.tsx';
import { afterMake } from '../../renderer/stats/afterMake.ts';
import type { Change } from '../../renderer/stats/model/chokeIndex.ts';
import {
  count,
  demoRounds,
  seasonOf,
  textOf,
  turningOn,
  weeklyRounds,
  without,
  type Season,
} from './seasons.ts';

const demo = seasonOf(demoRounds());
// A room that never answers: what stands there then is known without asking.
const SILENT = { studyRoom: { changeBetween: () => new Promise<Change | null>(() => undefined) } };
const drawn = (screen: ReactNode): string =>
  renderToStaticMarkup(<DoorsContext value={SILENT as unknown as Doors}>{screen}</DoorsContext>);
const rowsOf = (markup: string, table: string): string[] => {
  const [, rest = ''] = markup.split(`aria-label="${table}"`);
  const [, body = ''] = rest.split('<tbody>');
  return (body.split('</tbody>')[0] ?? '').split('<tr>').slice(1).map(textOf);
};

describe('week by week', () => {
  it('puts the numbers of every week in a table, the newest first', () => {
    const season = seasonOf(without(weeklyRounds(6), ['2021-W03'], ['2021-W04']));
    const rows = rowsOf(drawn(<WeekByWeek index={season.index} />), 'Numbers week by week');
    expect(rows).toHaveLength(6);
    expect(rows[0]).toMatch(
      /^8 Feb 2021 2021-W06 \d+ % \d+ to \d+ % \d+ % \d+ to \d+ % −?\d+ points? −?\d+ to \d+ 50 relaxed, 25 pressured$/,
    );
    expect(rows[2]).toMatch(/50 relaxed, 0 pressured$/);
    expect(rows[3]).toMatch(/none, carried over$/);
  });

  it('says at once how the drop moved from the first week to the last', () => {
    const text = textOf(drawn(<WeekByWeek index={demo.index} />));
    const { change } = demo.index;
    const { headline } = changeWords(change as Change, '2026-09-14', '2026-11-16');
    expect(text).toContain(headline);
    expect(text).toContain('From the week of 14 Sept 2026 21 Sept 2026');
  });

  it('lets choose only weeks with shots', () => {
    const season = seasonOf(without(weeklyRounds(6), ['2021-W03']));
    const markup = drawn(<WeekByWeek index={season.index} />);
    expect(count(markup, '<option value="2021-W02"')).toBe(2);
    expect(count(markup, '<option value="2021-W03"')).toBe(0);
  });

  it('has no two weeks to choose from in the first one', () => {
    const markup = drawn(<WeekByWeek index={seasonOf(weeklyRounds(1)).index} />);
    expect(count(markup, '<select')).toBe(0);
    expect(textOf(markup)).toContain('From the second week on');
  });
});

describe('the drop by spot', () => {
  const bySpot = ({ index, figures }: Season, told = true): string =>
    drawn(<BySpot index={told ? index : null} figures={figures} rules="FIBA" ownSpots={new Map()} />);

  it('draws every spot of the mix as shot and evened out, and gives the numbers of every kind', () => {
    const markup = bySpot(demo);
    // Each once beside the figure and once on its scale, and once in the key.
    expect(count(markup, 'class="mark drop open"')).toBe(2 * 8 + 1);
    const rows = rowsOf(markup, 'Drop by spot');
    expect(rows).toHaveLength(demo.index.places.length);
    const corner = demo.index.places.find(({ spot }) => spot === 'left-corner');
    expect(rows[0]).toContain('Left corner, catch-and-shoot');
    expect(rows[0]).toContain(`${corner?.raw.relaxed.makes} of ${corner?.raw.relaxed.attempts}`);
    expect(rows[0]).toContain(`${Math.round(corner?.relaxed ?? 0)} %`);
  });

  it('puts groups of spots beside each other', () => {
    const text = textOf(bySpot(demo));
    for (const group of ['Threes', 'Mid-range', 'Free throws']) {
      expect(text).toMatch(new RegExp(`${group} \\d+ points?`));
    }
    expect(text).toContain('% of the mix');
    const rows = rowsOf(bySpot(demo), 'The numbers by kind of spot');
    expect(rows).toHaveLength(3);
    expect(rows[0]).toMatch(/^Threes \d+ points? −?\d+ to \d+ \d+ %$/);
  });

  it('marks a spot that was never shot under pressure', () => {
    const rounds = weeklyRounds(6).map((round) =>
      round.condition === 'relaxed'
        ? round
        : {
            ...round,
            entries: round.entries.filter((entry) => round.stops[entry.stop]?.spot !== 'left-elbow'),
          },
    );
    const markup = bySpot(seasonOf(rounds));
    expect(count(markup, 'class="spot-card broken"')).toBe(1);
    expect(textOf(markup)).toContain('judged by the other spots (Left elbow)');
    const elbow = rowsOf(markup, 'Drop by spot').find((row) => row.startsWith('Left elbow'));
    expect(elbow).toMatch(/judged by the other spots \d+ % \d+ of \d+ no shots –/);
  });

  it('is the make rates alone while no drop can be told', () => {
    const markup = bySpot(demo, false);
    expect(count(markup, 'type="radio"')).toBe(0);
    expect(count(markup, 'class="mark relaxed"')).toBeGreaterThan(7);
    expect(rowsOf(markup, 'Numbers by spot')).toHaveLength(8);
  });
});

describe('what turns the screw', () => {
  it('draws what was at times on and at times off, dearest first, and counts the shots', () => {
    const turns = [['clock', 'stake'], ['stake'], ['clock', 'crowd', 'stake']] as const;
    const season = seasonOf(turningOn(weeklyRounds(12), turns));
    const markup = drawn(<TurnsTheScrew index={season.index} rounds={season.rounds} />);
    const rows = rowsOf(markup, 'Numbers by ingredient');
    expect(rows).toHaveLength(2);
    expect(rows.some((row) => row.startsWith('The crowd noise'))).toBe(true);
    const [first, second] = season.index.ingredients;
    expect(first?.points).toBeGreaterThanOrEqual(second?.points ?? NaN);
    expect(rows.find((row) => row.startsWith('The clock'))).toMatch(/ 200 100 \d+ in 100$/);
    expect(textOf(markup)).toContain('In every pressured round so far: something on the line.');
  });

  it('has something to show in the invented season: watchers cost most there', () => {
    const rows = rowsOf(
      drawn(<TurnsTheScrew index={demo.index} rounds={demo.rounds} />),
      'Numbers by ingredient',
    );
    expect(rows).toHaveLength(3);
    expect(rows[0]).toContain('660 990');
  });

  it('draws nothing where nothing can be compared', () => {
    const season = seasonOf(turningOn(weeklyRounds(6), [['clock', 'stake']]));
    const markup = drawn(<TurnsTheScrew index={season.index} rounds={season.rounds} />);
    expect(count(markup, '<svg')).toBe(0);
    expect(textOf(markup)).toContain('Every pressured round so far had the same ingredients');
  });
});

describe('whether a make helps the next shot', () => {
  it('is told for both conditions with its span, and nothing without single shots', () => {
    const markup = drawn(<HotHand split={afterMake(demo.rounds)} />);
    // The invented shooters' shots do not depend on the shot before.
    expect(textOf(markup)).toContain('Relaxed, no difference that can be told from luck.');
    expect(rowsOf(markup, 'Numbers after a make and after a miss')).toHaveLength(2);
    const counted = demo.rounds.filter(({ entry }) => entry === 'counts');
    expect(drawn(<HotHand split={afterMake(counted)} />)).toBe('');
  });
});
