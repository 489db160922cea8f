import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../../renderer/basics/chance.ts';
import {
  CLEAR_EVIDENCE,
  conditionalEvidence,
  likelihoodRatio,
  signFlipEvidence,
  strataByDay,
} from '../../../renderer/stats/model/evidence.ts';
import { logChoose } from '../../../renderer/stats/special.ts';
import { freeThrows, roundOf, three } from '../rounds.ts';

const STRATUM = { relaxed: { makes: 15, attempts: 25 }, pressured: { makes: 10, attempts: 25 } };

describe('the conditional bet', () => {
  it('has the known likelihood ratios and mixture for 15 of 25 against 10 of 25', () => {
    // Worked by an independent prototype.
    expect(likelihoodRatio(STRATUM, -0.2)).toBeCloseTo(1.54689703, 8);
    expect(likelihoodRatio(STRATUM, -0.4)).toBeCloseTo(2.10711865, 8);
    expect(likelihoodRatio(STRATUM, -0.8)).toBeCloseTo(2.68133279, 8);
    expect(conditionalEvidence([[STRATUM]]).e).toBeCloseTo(1.74464301, 8);
  });

  it('is Fisher’s exact test at no drop, and peaks where R has the conditional estimate, −0.7945', () => {
    // P(10 or fewer pressured makes | 25 makes in all); 0.12889558 as in R's fisher.test.
    let tail = 0;
    for (let y = 0; y <= 10; y += 1) {
      tail += Math.exp(logChoose(25, y) + logChoose(25, 25 - y) - logChoose(50, 25));
    }
    expect(tail).toBeCloseTo(0.12889558, 8);
    // Far out all of the bet is on one outcome, so that its worth there is one over its chance at no drop.
    const worst = { relaxed: { makes: 25, attempts: 25 }, pressured: { makes: 0, attempts: 25 } };
    expect(1 / likelihoodRatio(worst, -60)).toBeCloseTo(Math.exp(-logChoose(50, 25)), 20);

    const steps = Array.from({ length: 2001 }, (_, i) => -1.5 + 0.0005 * i);
    const best = steps.reduce((so, slope) =>
      likelihoodRatio(STRATUM, slope) > likelihoodRatio(STRATUM, so) ? slope : so,
    );
    expect(Math.abs(best - -0.7945)).toBeLessThanOrEqual(0.0005);
  });

  it('is worth 1 on average where pressure does nothing, whatever was shot', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 0, max: 30 }),
        (relaxed, pressured, wanted) => {
          const makes = Math.min(wanted, relaxed + pressured);
          let mean = 0;
          for (let y = Math.max(0, makes - relaxed); y <= Math.min(makes, pressured); y += 1) {
            const chance = Math.exp(
              logChoose(pressured, y) + logChoose(relaxed, makes - y) - logChoose(relaxed + pressured, makes),
            );
            const stratum = {
              relaxed: { makes: makes - y, attempts: relaxed },
              pressured: { makes: y, attempts: pressured },
            };
            mean += chance * conditionalEvidence([[stratum]]).e;
          }
          expect(mean).toBeCloseTo(1, 10);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('keeps the days and the places apart', () => {
    const rounds = [
      roundOf('pressured', [three('top', 2, 5), freeThrows(4, 5)], { date: '2026-03-05' }),
      roundOf('relaxed', [three('top', 3, 5)], { date: '2026-03-02' }),
      roundOf('relaxed', [freeThrows(5, 5)], { date: '2026-03-05' }),
    ];
    const days = strataByDay(rounds);
    expect(days).toEqual([
      [{ relaxed: { makes: 3, attempts: 5 }, pressured: { makes: 0, attempts: 0 } }],
      [
        { relaxed: { makes: 5, attempts: 5 }, pressured: { makes: 4, attempts: 5 } },
        { relaxed: { makes: 0, attempts: 0 }, pressured: { makes: 2, attempts: 5 } },
      ],
    ]);
    expect(strataByDay(rounds.toReversed())).toEqual(days);
    // A day in one condition alone neither wins nor loses.
    expect(conditionalEvidence(days.slice(0, 1)).e).toBeCloseTo(1, 12);
  });
});

describe('the sign-flip bet', () => {
  it('has the known worth after one pair that differs by 5', () => {
    expect(signFlipEvidence([{ difference: 5 }]).e).toBeCloseTo(1.60178544, 8);
  });

  it('is worth 1 on average over the coins', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -8, max: 8 }), { minLength: 1, maxLength: 7 }), (sizes) => {
        let mean = 0;
        for (let coins = 0; coins < 2 ** sizes.length; coins += 1) {
          const pairs = sizes.map((d, i) => ({ difference: (coins >> i) & 1 ? d : -d }));
          mean += signFlipEvidence(pairs).e / 2 ** sizes.length;
        }
        expect(mean).toBeCloseTo(1, 10);
      }),
      { numRuns: 60 },
    );
  });

  it('starts at 1 and remembers its highest', () => {
    expect(signFlipEvidence([])).toEqual({ e: 1, highest: 1 });
    const up = signFlipEvidence([{ difference: 6 }, { difference: 6 }]);
    const down = signFlipEvidence([{ difference: 6 }, { difference: 6 }, { difference: -12 }]);
    expect(down.highest).toBeCloseTo(up.e, 12);
    expect(down.e).toBeLessThan(down.highest);
  });

  it('rarely calls a drop that is not there, though looked at after every pair', () => {
    const rng = rngFromSeed(11);
    let called = 0;
    const shooters = 1000;
    for (let shooter = 0; shooter < shooters; shooter += 1) {
      const pairs = Array.from({ length: 90 }, () => {
        let difference = 0;
        for (let shot = 0; shot < 20; shot += 1)
          difference += (rng.chance(0.5) ? 1 : 0) - (rng.chance(0.5) ? 1 : 0);
        return { difference };
      });
      if (signFlipEvidence(pairs).highest >= CLEAR_EVIDENCE) called += 1;
    }
    // Ville's bound is 5 %; three standard errors above it would be 7 %.
    expect(called / shooters).toBeLessThan(0.05);
    expect(called).toBeGreaterThan(0);
  });
});
