import { describe, expect, it } from 'vitest';

import { addDays } from '../../renderer/basics/days.ts';
import type { Cell, Round } from '../../renderer/log/book.ts';
import type { Condition } from '../../renderer/log/events.ts';
import { freeThrowTally } from '../../renderer/stats/freeThrows.ts';
import { neighbourPairs } from '../../renderer/stats/model/neighbourPairs.ts';
import { studyOf, type Study, type StudyOptions } from '../../renderer/stats/study.ts';
import { freeThrows, roundOf, three } from './rounds.ts';

/** A day with a pair of rounds: makes relaxed and pressured, and which came first. */
interface Day {
  readonly makes: readonly [number, number];
  readonly first: Condition;
}

function record(days: readonly Day[], cells: (makes: number) => Cell[]): Round[] {
  return days.flatMap(({ makes, first }, day) => {
    const date = addDays('2026-03-02', day);
    const of = (condition: Condition): Round => ({
      ...roundOf(condition, cells(condition === 'relaxed' ? makes[0] : makes[1]), { date }),
      label: condition === first ? '1' : '2',
    });
    return [of('relaxed'), of('pressured')];
  });
}

function study(rounds: readonly Round[], options: StudyOptions = {}): Study {
  return studyOf(rounds, { seed: 1, ...options }).study;
}

/** Of a record that names no pairs. */
function studyOfFile(rounds: readonly Round[]): Study {
  return study(rounds, { neighbours: neighbourPairs(rounds) });
}

/** Pressure cost much for ten days and then nothing: the pairs once said so clearly, the whole record does not. */
function faded(first: (day: number) => Condition): Round[] {
  const days = Array.from({ length: 26 }, (_, day): Day => {
    return { makes: day < 10 ? [14, 9] : [11, 12], first: first(day) };
  });
  return record(days, (makes) => [three('top', makes, 20)]);
}

describe('a study of pairs that nobody tossed a coin for', () => {
  it('counts them like tossed ones where a coin could have ordered them', () => {
    const fair = studyOfFile(faded((day) => (day % 2 === 0 ? 'relaxed' : 'pressured')));
    expect(fair.pairs.n).toBe(26);
    expect(fair.pairEvidence.highest).toBeGreaterThan(20);
    expect(fair.pairsFair).toBe(true);
    expect(fair.verdict).toEqual({ kind: 'drop', sure: 'clear' });
  });

  it('rests nothing on them where the order was always the same', () => {
    const same = studyOfFile(faded(() => 'relaxed'));
    expect(same.pairs.n).toBe(26);
    expect(same.pairEvidence.highest).toBeGreaterThan(20);
    expect(same.pairsFair).toBe(false);
    expect(same.verdict).not.toEqual({ kind: 'drop', sure: 'clear' });
    expect(same.disagrees).toBe(false);
  });

  it('finds none where they are to be tossed, as in the log', () => {
    const tossed = study(faded(() => 'relaxed'));
    expect(tossed).toMatchObject({ pairs: { n: 0 }, pairEvidence: { e: 1, highest: 1 }, pairsFair: true });
  });
});

describe('a study of free throws alone', () => {
  it('reads verdict, pairs and evidence from free throws', () => {
    // Threes suffer under pressure, free throws do not.
    const days = Array.from({ length: 10 }, (_, day): Day => {
      return { makes: [14, 6], first: day % 2 === 0 ? 'relaxed' : 'pressured' };
    });
    const rounds = record(days, (makes) => [three('top', makes, 20), freeThrows(4, 5)]);
    const all = studyOfFile(rounds);
    const neighbours = neighbourPairs(rounds, freeThrowTally);
    const line = study(rounds, { mix: 'free-throws', neighbours });
    expect(all.verdict).toEqual({ kind: 'drop', sure: 'clear' });
    expect(all.pairs).toMatchObject({ n: 10, mean: expect.closeTo((100 * 8) / 25, 8) as number });
    expect(line.pairs).toMatchObject({ n: 10, mean: 0 });
    expect(line.pairEvidence).toEqual({ e: 1, highest: 1 });
    expect(line.have.pressured).toEqual({ makes: 40, attempts: 50 });
    expect(line.verdict).toEqual({ kind: 'none', needs: { pressured: 50, sessions: 0 } });
    const tossed = rounds.map((round): Round => ({ ...round, pair: { id: round.date, place: 1 } }));
    expect(study(tossed, { mix: 'free-throws' }).pairs).toEqual(line.pairs);
  });
});
