import { describe, expect, it } from 'vitest';

import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { EMPTY_BOOK } from '../../renderer/log/book.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { fitDrop } from '../../renderer/stats/model/fitDrop.ts';
import { modelData } from '../../renderer/stats/model/modelData.ts';
import { studyInSteps, studyOf } from '../../renderer/stats/study.ts';
import { freeThrows, roundOf } from './rounds.ts';

const book = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
const [shooter] = book.shooters.keys();
const rounds = [...book.rounds.values()].filter((round) => round.shooter === shooter);
const { study } = studyOf(rounds);

describe('a study', () => {
  it('holds the index of the record, and is the same in whatever order the rounds come', () => {
    expect(study.index).toEqual(fitDrop(modelData(rounds)).index);
    expect(studyOf(rounds.toReversed()).study).toEqual(study);
  });

  it('can be handed over by a worker', () => {
    expect(structuredClone(study)).toEqual(study);
  });

  it('works the drop out anew without the rounds in which no pressure was felt', () => {
    const { felt, index } = study;
    expect(felt.unfelt.rounds.length).toBeGreaterThan(0);
    expect(felt.felt.rounds.length).toBeGreaterThan(felt.unfelt.rounds.length);
    if (index.kind === 'none' || felt.line === null) throw new Error('no index');
    const without = fitDrop(modelData(rounds, { feltAbove: felt.line }), { hyper: index.hyper.mean });
    expect(without.index).toMatchObject({ overall: { points: felt.dropWithout?.points } });
    expect(felt.dropWithout?.points).not.toBeCloseTo(index.overall.points, 6);
  });

  it('is the same after a round more, corrected or taken away as if all were read anew', () => {
    const [first, ...others] = rounds;
    if (!first || study.index.kind === 'none') throw new Error('no rounds');
    const hyper = study.index.hyper.mean;
    const corrected = { ...first, nerves: 9, entries: first.entries.slice(1) };
    for (const record of [others, rounds, [corrected, ...others]]) {
      for (const options of [{}, { hyper }, { hyper, mix: 'free-throws' as const }]) {
        // Copies are other objects, of which nothing is known yet.
        const anew = studyOf(structuredClone(record), { ...options, draws: 100 });
        expect(studyOf(record, { ...options, draws: 100 }).study).toEqual(anew.study);
      }
    }
  });

  it('gives way many times to the very end, and is never done before it is', () => {
    for (const options of [{}, study.index.kind === 'index' ? { hyper: study.index.hyper.mean } : {}]) {
      const shares = [...studyInSteps(rounds, { ...options, draws: 100 })];
      expect(shares).toEqual(shares.toSorted((a, b) => a - b));
      expect(shares.at(-1)).toBeLessThan(1);
      expect(new Set(shares.filter((share) => share > 0.8)).size).toBeGreaterThan(2);
    }
  });

  it('leaves side questions to the thorough one where spreads are given', () => {
    if (study.index.kind === 'none') throw new Error('no index');
    const quick = studyOf(rounds, { hyper: study.index.hyper.mean }).study;
    expect(quick.dayEvidence).toBeNull();
    expect(quick.felt.dropWithout).toBeNull();
    expect(quick.pairs).toEqual(study.pairs);
    if (quick.index.kind === 'none') throw new Error('no index');
    expect(quick.index.overall.points).toBeCloseTo(study.index.overall.points, 0);
  });

  it('says why there is no index, and gives no verdict', () => {
    const record = [roundOf('relaxed', [freeThrows(7, 10)])];
    expect(studyOf([]).study).toMatchObject({
      index: { kind: 'none', reason: 'no relaxed shot' },
      verdict: { kind: 'none', needs: { pressured: 100, sessions: 4 } },
      pairs: { n: 0 },
      dayEvidence: { e: 1, highest: 1 },
    });
    expect(studyOf(record).study.index).toMatchObject({ kind: 'none', reason: 'no pressured shot' });
  });
});
