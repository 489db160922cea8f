import { describe, expect, it } from 'vitest';

import { CATALOGUE } from '../../renderer/games/catalogue.ts';
import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { EMPTY_BOOK } from '../../renderer/log/book.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { gamePrices } from '../../renderer/store/gamePrices.ts';
import { gamesOf, type ListedGame } from '../../renderer/store/gameActions.ts';
import { gameToPlay } from '../../renderer/store/gameToPlay.ts';

const NOW = { at: Date.parse('2026-11-25T18:00Z'), zone: 60 };
const book = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
const [shooter = ''] = book.shooters.keys();
const prices = gamePrices(book, shooter, NOW);
const games = gamesOf(book);

function game(id: string): ListedGame {
  const found = games.find((one) => one.id === id);
  if (!found) throw new Error(`no game ${id}`);
  return found;
}

describe('a game about to be played', () => {
  it.each(CATALOGUE.map(({ id }) => id))('%s is by itself what the list says', (id) => {
    const one = game(id);
    const { played, price } = gameToPlay(prices, one, 'as it is', one.clock, 7);
    expect(played).toEqual({ name: one.name, plan: one.plan, chance: price.chance });
    expect(price).toEqual(prices.price(one, 7));
  });

  it.each([
    ['reach-arc', /^Ten of 25 around the arc: \d+ of 25$/],
    ['streak-line', /^Ten in a row at the line: \d+ in a row$/],
    ['race-line', /: to \d+$/],
    ['lives-line', /: \d+ (life|lives)$/],
    ['trip-bonus', /: \d+ points$/],
    ['racks-coin', /: \d+ points?$/],
    ['last-elbows', /: \d of 6$/],
    ['climb-out', /: steps of \d, \d, \d, \d$/],
    ['duel-arc', /: \d (ahead|behind)$/],
  ])('%s is told apart from itself where it is made harder or easier', (id, name) => {
    const one = game(id);
    for (const hard of [0.05, 0.9]) {
      const { played, price } = gameToPlay(prices, one, hard, null, 7);
      expect(played.plan).not.toEqual(one.plan);
      expect(played.name).toMatch(name);
      expect(played.chance).toBe(price.chance);
    }
  });

  it('keeps its name where it is already as hard as is wanted', () => {
    const one = game('reach-arc');
    const { chance } = prices.price(one);
    expect(gameToPlay(prices, one, chance, null, 7).played.name).toBe(one.name);
  });

  it('is easier the longer its clock, and fair on the clock it is played on', () => {
    const racks = game('racks-minute');
    const on = (seconds: number) => gameToPlay(prices, racks, 'as it is', { kind: 'round', seconds }, 7);
    expect(on(120).price.chance).toBeLessThan(on(240).price.chance);
    const fair = gameToPlay(prices, racks, 0.5, { kind: 'round', seconds: 60 }, 7);
    // About nine balls get away, so a few points are an even bet.
    expect(fair.played.plan).toMatchObject({ family: 'racks' });
    expect(Math.abs(fair.price.chance - 0.5)).toBeLessThan(0.15);
    expect(fair.played.name).toMatch(/^Five racks in a minute: [2-6] points$/);
  });
});
