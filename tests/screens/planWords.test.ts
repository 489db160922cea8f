import { describe, expect, it } from 'vitest';

import { adviceWords, aimWords, hindsightWords, needWords } from '../../renderer/screens/result/planWords.ts';
import { studyOf, type Study } from '../../renderer/stats/study.ts';
import { freeThrows, roundOf } from '../stats/rounds.ts';
import { demoRounds } from './seasons.ts';

const rounds = demoRounds();
const { study } = studyOf(rounds);
const HABIT = {
  sessionsPerWeek: 3,
  relaxedPerWeek: 150,
  pressuredPerWeek: 40,
  relaxedRate: 0.5,
  assumed: false,
};
const PLANNED = {
  points: 10,
  order: 'pairs',
  weeks: 8,
  need: { kind: 'shots', pressuredPerWeek: 65, relaxedPerWeek: 150, chance: 0.81 },
  comfortable: true,
} as const;

describe('what to do next', () => {
  it.each([
    [{ kind: 'none', needs: { pressured: 50, sessions: 1 } }, 'Shoot pairs'],
    [{ kind: 'unclear' }, 'Go on with pairs'],
    [{ kind: 'same' }, 'Raise it a step'],
    [{ kind: 'gain', sure: 'clear' }, 'Raise the pressure a step'],
    [{ kind: 'drop', sure: 'likely' }, 'Practise under pressure'],
  ] as const)('follows the verdict %j', (verdict, words) => {
    expect(adviceWords({ ...study, verdict }).join(' ')).toContain(words);
  });

  it('names the shots that pressure costs most, where some stand out', () => {
    const { index } = study;
    if (index.kind === 'none') throw new Error('no index');
    const [threes, ...others] = index.groups;
    const withGroups = (groups: typeof index.groups): Study['index'] => ({ ...index, groups });
    if (!threes) throw new Error('no group');
    const verdict = { kind: 'drop', sure: 'clear' } as const;
    const costly = withGroups([{ ...threes, group: 'threes', points: 40, dearest: 0.97 }, ...others]);
    expect(adviceWords({ ...study, verdict, index: costly })[1]).toBe(
      'It costs you most behind the arc, about 40 points; begin there.',
    );
    const even = withGroups(index.groups.map((group) => ({ ...group, dearest: 0.89 })));
    expect(adviceWords({ ...study, verdict, index: even })).toHaveLength(1);
  });

  it('says how much it takes until a drop shows', () => {
    expect(aimWords({ points: 10, advice: null, weeksAsNow: 0 }, HABIT)).toContain('show it by now');
    expect(aimWords({ points: 5, advice: null, weeksAsNow: null }, HABIT)).toContain('No plan');
    expect(aimWords({ points: 10, advice: PLANNED, weeksAsNow: null }, HABIT)).toBe(
      'With about 65 pressured shots a week, each in a pair with a relaxed one, for 8 weeks, a drop of 10 points would most likely show.',
    );
    expect(
      aimWords({ points: 10, advice: { ...PLANNED, comfortable: false }, weeksAsNow: 30 }, HABIT),
    ).toContain('That is a lot');
    expect(aimWords({ points: 10, advice: PLANNED, weeksAsNow: 1 }, HABIT)).toBe(
      'Shoot pairs and go on as you do, about 40 pressured shots a week: in one week a drop of 10 points would most likely show.',
    );
  });

  it('has words for every need', () => {
    expect(needWords({ need: PLANNED.need })).toBe('65 a week');
    expect(needWords({ need: { ...PLANNED.need, pressuredPerWeek: 0 } })).toBe('none more needed');
    for (const reason of ['rate too low', 'too few sessions', 'days', 'too many shots'] as const) {
      expect(needWords({ need: { kind: 'none', reason } })).not.toBe('');
    }
    expect(needWords({ need: { kind: 'none', reason: 'never both' } })).toBe('no verdict this way');
  });

  it('asks for more pressure where hardly any was felt, but not from a shooter with a drop', () => {
    const unfelt = { ...study.felt, unfelt: study.felt.felt, felt: study.felt.unfelt };
    const told = (verdict: Study['verdict']) => adviceWords({ ...study, felt: unfelt, verdict }).join(' ');
    expect(told({ kind: 'unclear' })).toContain('Pressure hardly arrived so far');
    expect(told({ kind: 'drop', sure: 'clear' })).toContain('Practise under pressure');
  });

  it('says what the shots so far could have shown', () => {
    const shots = { relaxed: 25, pressured: 25 };
    const date = '2026-11-24';
    expect(hindsightWords({ latest: { date, shots, points: 35 }, soFar: 7 }, 4)).toEqual([
      'The 25 relaxed and 25 pressured shots of Tue, 24 Nov 2026 by themselves would most likely have shown a drop of 35 points or more, and hidden a smaller one.',
      'All you have shot would most likely have shown a drop of 7 points or more.',
    ]);
    expect(hindsightWords({ latest: { date, shots, points: null }, soFar: 35 }, 3)).toEqual([
      'The 25 relaxed and 25 pressured shots of Tue, 24 Nov 2026 decide nothing by themselves: a good or a bad day can pass for pressure.',
    ]);
    const oneSided = { latest: { date, shots: { relaxed: 25, pressured: 0 }, points: null }, soFar: null };
    expect(hindsightWords(oneSided, 0)).toEqual([]);
  });
});

describe('the outlook', () => {
  it('is worked out from the record and its study', () => {
    const { habit, table, hindsight } = study.outlook;
    expect(habit.assumed).toBe(false);
    expect(table.rows).toHaveLength(18);
    expect(hindsight.soFar).toBeLessThan(10);
  });

  it('stands on what is usual while there is little to go by', () => {
    const few = [roundOf('relaxed', [freeThrows(7, 10)])];
    const { habit, table, hindsight } = studyOf(few).study.outlook;
    expect(habit.assumed).toBe(true);
    expect(table.aims.some(({ advice }) => advice !== null)).toBe(true);
    expect(hindsight.soFar).toBeNull();
  });
});
