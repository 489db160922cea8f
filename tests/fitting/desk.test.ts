import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { Desk } from '../../renderer/fitting/desk.ts';
import type { Question, Reply } from '../../renderer/fitting/messages.ts';
import { studyOf } from '../../renderer/stats/study.ts';
import { PLAIN, play } from '../bench/modelWorld.ts';
import { groupOf, shoot } from '../games/onCourt.ts';

const { rounds } = play({ ...PLAIN, weeks: 4, pressure: () => -0.4 }, rngFromSeed(8));
const [{ shooter } = { shooter: '' }] = rounds;

/** A desk whose clock moves on by 20 ms at every look, so that it breathes after every step. */
function desk() {
  const replies: Reply[] = [];
  const breaths: (() => void)[] = [];
  let now = 0;
  const sat = new Desk({
    reply: (reply) => void replies.push(reply),
    now: () => (now += 0.02),
    breathe: () => new Promise((resolve) => void breaths.push(resolve)),
  });
  const breathe = async () => {
    for (const breath of breaths.splice(0)) breath();
    await new Promise((resolve) => setImmediate(resolve));
  };
  return {
    replies,
    hear: sat.hear.bind(sat),
    ask: (number: number, question: Question) => sat.hear({ say: 'ask', number, question }),
    breathe,
    /** Lets it work to the end. */
    finish: async () => {
      for (let turn = 0; turn < 200; turn += 1) await breathe();
    },
    answers: () => replies.filter(({ is }) => is === 'answer'),
  };
}

const study: Question = { ask: 'study', of: { shooter, mix: 'relaxed', pressure: null, hyper: null } };

describe('the desk in the fitting worker', () => {
  it('studies what it was told, in pieces or at once, and tells its progress', async () => {
    const { hear, ask, finish, replies, answers } = desk();
    hear({ say: 'news', shooter, changed: rounds.slice(0, 40), gone: [] });
    hear({ say: 'news', shooter, changed: rounds.slice(40), gone: [] });
    ask(1, study);
    await finish();
    expect(answers()).toEqual([
      { number: 1, is: 'answer', answer: { ask: 'study', content: studyOf(rounds).study } },
    ]);
    const shares = replies.flatMap((reply) => (reply.is === 'progress' ? [reply.share] : []));
    expect(shares.length).toBeGreaterThan(20);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  });

  it('takes a corrected round in place of the old one, and forgets one that is gone', async () => {
    const { hear, ask, finish, answers } = desk();
    const [first, second] = rounds;
    if (!first || !second) throw new Error('no rounds');
    const corrected = { ...first, entries: first.entries.slice(0, 1) };
    hear({ say: 'news', shooter, changed: rounds, gone: [] });
    hear({ say: 'news', shooter, changed: [corrected], gone: [second.id] });
    ask(1, study);
    await finish();
    const left = [corrected, ...rounds.slice(2)];
    expect(answers()).toEqual([
      { number: 1, is: 'answer', answer: { ask: 'study', content: studyOf(left).study } },
    ]);
  });

  it('gives way to a later question, and to a rest', async () => {
    const { hear, ask, breathe, finish, answers } = desk();
    hear({ say: 'news', shooter, changed: rounds, gone: [] });
    ask(1, study);
    await breathe();
    ask(2, study);
    await breathe();
    hear({ say: 'rest' });
    await finish();
    expect(answers()).toEqual([
      { number: 1, is: 'answer', answer: { ask: 'study', content: null } },
      { number: 2, is: 'answer', answer: { ask: 'study', content: null } },
    ]);
  });

  it('answers a change between two weeks of the last study', async () => {
    const { hear, ask, finish, answers } = desk();
    const change = (from: string, to: string, mix: 'relaxed' | 'free-throws' = 'relaxed'): Question => ({
      ask: 'change',
      of: { shooter, mix, pressure: null, from, to },
    });
    ask(1, change('2026-W02', '2026-W04'));
    hear({ say: 'news', shooter, changed: rounds, gone: [] });
    ask(2, study);
    await finish();
    const { index } = studyOf(rounds).study;
    if (index.kind === 'none' || !index.change) throw new Error('no change');
    const { from, to } = index.change;
    ask(3, change(from, to));
    ask(4, change(from, '1999-W01'));
    // The latest study was for another mix.
    ask(5, change(from, to, 'free-throws'));
    await finish();
    const content = answers().map((reply) => (reply.is === 'answer' ? reply.answer.content : undefined));
    expect(content[0]).toBeNull();
    expect(content[2]).toEqual(index.change);
    expect(content.slice(3)).toEqual([null, null]);
  });

  it('asks under the pressure that was kept, and tells no change of another', async () => {
    const { hear, ask, finish, answers } = desk();
    const pressure = { dose: 1, ingredients: {} };
    hear({ say: 'news', shooter, changed: rounds, gone: [] });
    ask(1, { ask: 'study', of: { shooter, mix: 'relaxed', pressure, hyper: null } });
    await finish();
    const kept = studyOf(rounds, { pressure }).study;
    expect(kept).not.toEqual(studyOf(rounds).study);
    if (kept.index.kind === 'none' || !kept.index.change) throw new Error('no change');
    const { from, to } = kept.index.change;
    const of = { shooter, mix: 'relaxed', from, to } as const;
    ask(2, { ask: 'change', of: { ...of, pressure: null } });
    ask(3, { ask: 'change', of: { ...of, pressure } });
    await finish();
    const content = answers().map((reply) => (reply.is === 'answer' ? reply.answer.content : undefined));
    expect(content).toEqual([kept, null, kept.index.change]);
  });

  it('tells what hangs on the shots, and how the games of the forecasts ended, of a duel by both records', async () => {
    const { hear, ask, finish, answers } = desk();
    const plan = { family: 'duel', against: { kind: 'shooter' }, headStart: 0, extraPairs: 0 } as const;
    const log = groupOf(plan, 'shot', ['ines', 'tarek'], { game: { name: 'A duel', plan, chance: 0.5 } });
    for (const shot of 'oxoxox') shoot(log, shot === 'o');
    const book = log.book();
    const of = (one: string) => [...book.rounds.values()].filter((round) => round.shooter === one);
    hear({ say: 'news', shooter: 'ines', changed: of('ines'), gone: [] });
    ask(1, { ask: 'forecasts', shooter: 'ines' });
    ask(2, { ask: 'hangs', shooter: 'ines' });
    await finish();
    hear({ say: 'news', shooter: 'tarek', changed: of('tarek'), gone: [] });
    ask(3, { ask: 'forecasts', shooter: 'ines' });
    await finish();
    ask(4, { ask: 'hangs', shooter: 'ines' });
    await finish();
    const contents = answers().map((reply) => (reply.is === 'answer' ? reply.answer.content : undefined));
    expect(contents[0]).toMatchObject({ games: [] });
    expect(contents[1]).toMatchObject({ leverage: { shots: 0 } });
    expect(contents[2]).toMatchObject({ games: [{ said: 0.5, marks: 1, beaten: 1 }] });
    expect(contents[3]).toMatchObject({ leverage: { shots: 3, rounds: 1 } });
  });

  it('says what went wrong, and goes on', async () => {
    const { hear, ask, finish, replies } = desk();
    const [first, ...others] = rounds;
    if (!first) throw new Error('no rounds');
    hear({ say: 'news', shooter, changed: [{ ...first, shooter: 'someone else' }, ...others], gone: [] });
    ask(1, study);
    await finish();
    expect(replies).toEqual([{ number: 1, is: 'failure', detail: expect.stringContaining('one shooter') }]);
    hear({ say: 'news', shooter, changed: [first], gone: [] });
    ask(2, study);
    await finish();
    expect(replies.at(-1)).toMatchObject({ number: 2, is: 'answer' });
  });
});
