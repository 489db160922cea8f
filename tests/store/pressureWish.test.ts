import { describe, expect, it } from 'vitest';

import { clockOf, freshWish, gameWish, setupOf, wishFor } from '../../renderer/store/pressureWish.ts';

describe('a first wish', () => {
  it.each([
    // Attempts, and the seconds of a round clock: eight for each, up to the next five, twenty at least.
    [1, 20],
    [2, 20],
    [3, 25],
    [10, 80],
    [12, 100],
    [25, 200],
    [45, 360],
  ])('for %d attempts has %d seconds on the round clock', (attempts, seconds) => {
    expect(freshWish(attempts).roundSeconds).toBe(seconds);
  });
  it('is an even mark, a clock and a crowd, and nobody is told to watch', () => {
    expect(freshWish(10)).toMatchObject({
      stake: '',
      mark: true,
      wanted: 0.5,
      markMakes: null,
      clock: 'round',
      crowd: true,
      seen: 'nobody',
      guardian: false,
      doubles: null,
      coldStart: false,
      showChance: true,
    });
  });
});

describe('the wish as it can be played', () => {
  const wish = { ...freshWish(10), clock: 'shot' } as const;
  it('gives a count a clock for the round: a shot clock needs every shot tapped', () => {
    expect(wishFor('counts', wish)).toEqual({ ...wish, clock: 'round' });
    expect(wishFor('each-shot', wish)).toBe(wish);
    const none = { ...wish, clock: 'none' } as const;
    expect(wishFor('counts', none)).toBe(none);
  });
});

describe('a first wish for a game', () => {
  const stops = [{ spot: 'top', shot: 'catch', attempts: 5 }] as const;
  it('takes the game’s own clock and crowd', () => {
    const round = gameWish({ stops, clock: { kind: 'round', seconds: 70 }, crowd: false });
    expect(round).toMatchObject({ clock: 'round', roundSeconds: 70, crowd: false, mark: true });
    expect(clockOf(round)).toEqual({ kind: 'round', seconds: 70 });
    const shot = gameWish({ stops, clock: { kind: 'shot', seconds: 5 }, crowd: true });
    expect(clockOf(shot)).toEqual({ kind: 'shot', seconds: 5 });
    expect(shot.crowd).toBe(true);
  });
  it('has none where the game has none', () => {
    expect(clockOf(gameWish({ stops, clock: null, crowd: true }))).toBeNull();
  });
});

describe('the setup that is logged', () => {
  const mark = { makes: 6, chance: 0.48 };
  it('says everything that is on', () => {
    const wish = {
      ...freshWish(10),
      stake: '  Loser buys lunch ',
      seen: 'watched',
      coldStart: true,
      showChance: false,
    } as const;
    expect(setupOf(wish, mark, 7)).toEqual({
      stake: 'Loser buys lunch',
      mark,
      clock: { kind: 'round', seconds: 80 },
      crowd: true,
      ingredients: ['clock', 'crowd', 'stake', 'watchers', 'must-make', 'cold-start'],
      showChance: false,
      rung: 'forfeit',
      seed: 7,
    });
  });
  it('says nothing of what is off: an empty stake is none', () => {
    const wish = { ...freshWish(10), stake: '   ', clock: 'none', crowd: false } as const;
    expect(setupOf(wish, null, 7)).toEqual({
      stake: null,
      mark: null,
      clock: null,
      crowd: false,
      ingredients: [],
      showChance: true,
      rung: 'logged',
      seed: 7,
    });
  });
  it('stands on the rung of whoever sees it where nothing is on the line', () => {
    const wish = { ...freshWish(10), seen: 'filmed' } as const;
    const setup = setupOf(wish, mark, 7);
    expect(setup.rung).toBe('filmed');
    expect(setup.ingredients).toContain('watchers');
  });
  it('carries the debt it is shot for, and never who agreed to a video', () => {
    const doubles = { round: 'r', times: 1 } as const;
    const setup = setupOf({ ...freshWish(10), stake: 'Lunch', doubles, guardian: true }, mark, 7);
    expect(setup).toMatchObject({ doubles, rung: 'forfeit' });
    expect(JSON.stringify(setup)).not.toContain('guardian');
  });
  it('carries a game in place of a mark: it must be won, and in a duel there is an opponent', () => {
    const duel = {
      name: 'A duel',
      plan: {
        family: 'duel',
        against: { kind: 'drawn', rate: 0.5 },
        headStart: 0,
        extraPairs: 5,
      },
      chance: 0.46,
    } as const;
    const setup = setupOf({ ...freshWish(10), clock: 'none', crowd: false }, null, 7, duel);
    expect(setup).toMatchObject({ mark: null, game: duel, ingredients: ['must-make', 'opponent'] });
    expect(setupOf(freshWish(10), mark, 7)).not.toHaveProperty('game');
  });
  it('takes the seconds of the clock that was chosen', () => {
    const wish = { ...freshWish(10), clock: 'shot', shotSeconds: 6 } as const;
    expect(setupOf(wish, mark, 7).clock).toEqual({ kind: 'shot', seconds: 6 });
  });
});
