import { readFileSync } from 'node:fs';

import { describe, expect, it } from 'vitest';

import type { Rivals } from '../../bench/modelRivals.ts';
import { fitStatic, twelveWeeks } from './staticModel.ts';

/*
 * Against R: tests/fixtures/model/compare.R on the same 9,600 shots, its results stored with the versions of R, lme4 and
 * mgcv. `npx tsx tests/bench/modelRivals.ts` runs it anew where R is there.
 */
const stored = JSON.parse(
  readFileSync(new URL('../../fixtures/model/compare.json', import.meta.url), 'utf8'),
) as Required<Pick<Rivals, 'glmer' | 'gam'>>;

describe('the static part of the model', () => {
  const data = twelveWeeks();

  it('is mgcv’s penalised likelihood: estimates and errors to five digits', () => {
    const ours = fitStatic(data, stored.gam.daySd);
    expect(Object.keys(stored.gam.estimate)).toHaveLength(11);
    for (const [name, estimate] of Object.entries(stored.gam.estimate)) {
      const error = stored.gam.se[name] ?? NaN;
      expect(Math.abs((ours.estimate[name] ?? NaN) - estimate) / error, name).toBeLessThan(1e-4);
      expect((ours.se[name] ?? NaN) / error, name).toBeCloseTo(1, 4);
    }
  });

  it('is within 0.5 % of lme4’s glmer with nAGQ = 1, which also integrates the days out for the fixed effects', () => {
    const ours = fitStatic(data, stored.glmer.daySd);
    for (const [name, estimate] of Object.entries(stored.glmer.estimate)) {
      expect(Math.abs((ours.estimate[name] ?? NaN) / estimate - 1), name).toBeLessThan(0.005);
      expect(Math.abs((ours.se[name] ?? NaN) / (stored.glmer.se[name] ?? NaN) - 1), name).toBeLessThan(0.005);
    }
  });
});
