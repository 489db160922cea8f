import { beforeAll, describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { addDays } from '../../renderer/basics/days.ts';
import { STANDARD_CARDS } from '../../renderer/court/cards.ts';
import { simulateCard, simulateDay } from '../../renderer/games/simulate.ts';
import { abilityOn, chooseMark, forecast } from '../../renderer/stats/ability.ts';
import { dayOf, someShooter } from './simulatedRecord.ts';

const STOPS = STANDARD_CARDS.find(({ id }) => id === 'whole-45')?.stops ?? [];
const PLAN = ['relaxed', 'relaxed', 'pressured'] as const;
const SHOOTERS = 300;
/** Three standard errors of a share of half the shooters. */
const ERROR = 3 * Math.sqrt(0.25 / SHOOTERS);

/*
 * The forecast before a pressured round against what simulated shooters then do. Monte-Carlo error is three standard
 * errors at this many shooters; the seed is fixed, so the test always gives the same answer.
 */
describe.each([
  [0, 21],
  [2, 22],
  [8, 23],
])('a shooter with %d days on record', (days, seed) => {
  const wanted = [0.3, 0.5, 0.7] as const;
  const stated = wanted.map(() => 0);
  const reached = wanted.map(() => 0);
  let inRange = 0;

  beforeAll(() => {
    const rng = rngFromSeed(seed);
    for (let n = 0; n < SHOOTERS; n += 1) {
      const { shooter, day } = someShooter(rng);
      const dates = Array.from({ length: days }, (_, at) => addDays('2026-03-02', 3 * at));
      const rounds = dates.flatMap((date) => dayOf(date, day(), STOPS, PLAN, rng));
      const ability = abilityOn(rounds, 'pressured', STOPS, dates.at(-1) ?? '2026-03-02');
      const made = simulateCard(day(), STOPS, true, simulateDay(shooter, rng), rng).filter(Boolean).length;
      for (const [at, chance] of wanted.entries()) {
        const mark = chooseMark(ability, chance);
        stated[at] = (stated[at] ?? NaN) + mark.chance / SHOOTERS;
        reached[at] = (reached[at] ?? NaN) + (made >= mark.makes ? 1 : 0) / SHOOTERS;
      }
      const { low, high } = forecast(ability).range;
      if (made >= low && made <= high) inRange += 1;
    }
  }, 60_000);

  it.each([0, 1, 2])('reaches mark %d as often as its stated chance', (at) => {
    expect(Math.abs((reached[at] ?? NaN) - (stated[at] ?? NaN))).toBeLessThan(ERROR);
    // The steps between marks are small on 45 shots, so the stated chance is near the wanted one.
    expect(Math.abs((stated[at] ?? NaN) - (wanted[at] ?? NaN))).toBeLessThan(0.03);
  });
  it('ends in the 80 % range at least that often', () => {
    expect(inRange / SHOOTERS).toBeGreaterThan(0.8 - ERROR);
    // Whole makes make the range hold a little more than 80 %.
    expect(inRange / SHOOTERS).toBeLessThan(0.9);
  });
});
