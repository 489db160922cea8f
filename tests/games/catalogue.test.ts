import * as v from 'valibot';
import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { isSpot } from '../../renderer/court/spots.ts';
import { builtIn, CATALOGUE } from '../../renderer/games/catalogue.ts';
import { gameFault } from '../../renderer/games/gameFault.ts';
import { ruleOf } from '../../renderer/games/ruleOf.ts';
import { solve } from '../../renderer/games/solver.ts';
import { GAME_PLAN } from '../../renderer/log/gameSchema.ts';

const FAMILIES = ['reach', 'streak', 'race', 'lives', 'trips', 'racks', 'last shot', 'climb', 'duel'];

describe('the built-in games', () => {
  it('are thirty, of every family, each with an id and a name of its own', () => {
    expect(CATALOGUE).toHaveLength(30);
    expect(new Set(CATALOGUE.map(({ plan }) => plan.family))).toEqual(new Set(FAMILIES));
    expect(new Set(CATALOGUE.map(({ id }) => id)).size).toBe(30);
    expect(new Set(CATALOGUE.map(({ name }) => name.toLowerCase())).size).toBe(30);
  });
  it('are found by their id', () => {
    expect(builtIn('streak-line')?.name).toBe('Ten in a row at the line');
    expect(builtIn('of my own')).toBeNull();
  });
});

describe.each(CATALOGUE.map((game) => [game.id, game] as const))('%s', (_, game) => {
  const { plan, stops, words, name, clock } = game;

  it('can be written into the log, and stands on every court', () => {
    expect(v.parse(GAME_PLAN, plan)).toEqual(plan);
    expect(stops.every(({ spot }) => isSpot(spot))).toBe(true);
    expect(gameFault(plan, stops)).toBeNull();
  });

  it('is told in one sentence', () => {
    expect(name.length).toBeLessThanOrEqual(40);
    expect(words).toMatch(/^[A-Z][^.]*\.$/);
    expect(words.length).toBeLessThanOrEqual(140);
  });

  it('is won with makes alone and lost with misses alone, and every play ends', () => {
    const { rule } = ruleOf(plan, stops, 4);
    const play = (makes: () => boolean) => {
      let state = rule.start;
      let turns = 0;
      while (!rule.finished(state)) {
        const other = plan.family === 'duel' && turns % 2 === 1;
        state = rule.step(state, other ? !makes() : makes());
        turns += 1;
        expect(turns).toBeLessThanOrEqual(rule.longest);
      }
      return rule.won(state);
    };
    expect(play(() => true)).toBe(true);
    expect(play(() => false)).toBe(false);
    const rng = rngFromSeed(3);
    for (let n = 0; n < 50; n += 1) play(() => rng.chance(0.5));
  });

  it('is neither sure nor hopeless for a good amateur', () => {
    const rule = ruleOf(plan, stops, 4);
    const rates = rule.stops.map((stop) => (stops[stop]?.shot === 'free-throw' ? 0.72 : 0.42));
    const half = rates.length / 2;
    const own = plan.family === 'duel' ? rates.map((rate, at) => (at < half ? rate : 0.5)) : rates;
    const { chance } = solve(rule.rule, { weights: [1], rates: [own] }).standing([]);
    expect(chance).toBeGreaterThan(0.2);
    expect(chance).toBeLessThan(0.95);
  });

  it('has the clock of its family', () => {
    const own = plan.family === 'last shot' ? plan.to : null;
    expect(clock?.kind ?? null).toBe(plan.family === 'racks' ? 'round' : own === null ? null : 'shot');
    if (own !== null && clock?.seconds !== own) throw new Error('its clock shows more than its most');
  });
});
