import { beforeEach, describe, expect, it } from 'vitest';

import { MOST_STOPS, STANDARD_CARDS, type Stop } from '../../renderer/court/cards.ts';
import {
  cardNameFault,
  makeCard,
  placeSpot,
  removeCard,
  spotNameFault,
  stopsFault,
  unplacedSpots,
} from '../../renderer/store/cardActions.ts';
import { createGym, type Gym } from '../../renderer/store/gymStore.ts';
import { cardsOf } from '../../renderer/store/roundActions.ts';
import { fakeWorld } from './fakeWorld.ts';

const STOP: Stop = { spot: 'top', shot: 'catch', attempts: 3 };

let gym: Gym;
const book = () => gym.store.getState().book;
beforeEach(() => {
  gym = createGym(
    fakeWorld({
      open: () => Promise.resolve([]),
      append: () => Promise.resolve(),
      exportFile: () => Promise.resolve(new Uint8Array()),
      onLost: () => undefined,
    }),
  );
});

describe('a card of one’s own', () => {
  it('stands with the standard ones, and goes again', async () => {
    expect(await makeCard(gym, '  Elbows  ', [STOP])).toBe(true);
    const [card] = book().cards.values();
    expect(card).toMatchObject({ name: 'Elbows', stops: [STOP] });
    expect(cardsOf(book())).toHaveLength(STANDARD_CARDS.length + 1);
    expect(await removeCard(gym, card?.id ?? '')).toBe(true);
    expect(cardsOf(book())).toEqual(STANDARD_CARDS);
  });
  it.each([
    ['', /give the card a name/],
    ['   ', /give the card a name/],
    ['ten FREE throws', /already a card called Ten free throws/],
    ['elbows', /already a card called Elbows/],
    ['Corners', null],
  ])('named %j', async (name, fault) => {
    await makeCard(gym, 'Elbows', [STOP]);
    const said = cardNameFault(book(), name);
    expect(said === null ? null : fault?.test(said)).toBe(fault === null ? null : true);
  });
  it('has from one stop to the most', () => {
    expect(stopsFault([])).toMatch(/at least one stop/);
    expect(stopsFault(Array.from({ length: MOST_STOPS }, () => STOP))).toBeNull();
    expect(stopsFault(Array.from({ length: MOST_STOPS + 1 }, () => STOP))).toMatch(/at most 30/);
  });
});

describe('a spot of one’s own', () => {
  it('is put on the floor, and moved', async () => {
    await placeSpot(gym, ' Short corner ', { x: -5, y: 0.5 });
    await placeSpot(gym, 'Short corner', { x: -5.5, y: 0.5 });
    expect([...book().ownSpots]).toEqual([['Short corner', { x: -5.5, y: 0.5 }]]);
  });
  it.each([
    ['left-corner', false, /Left corner is on every court/],
    ['Left Corner', false, /on every court/],
    ['  TOP of the key ', false, /on every court/],
    ['top', false, /on every court/],
    ['short  corner', false, /already a spot called Short corner/],
    ['Short corner', true, null],
    ['Deep wing', false, null],
    [' ', false, /give the spot a name/],
  ])('named %j (moving: %j)', async (name, moving, fault) => {
    await placeSpot(gym, 'Short corner', { x: -5, y: 0.5 });
    const said = spotNameFault(book(), name, moving);
    expect(said === null ? null : fault?.test(said)).toBe(fault === null ? null : true);
  });
  it('that a file named waits for its place', async () => {
    await gym.dispatch([
      {
        type: 'RoundImported',
        body: {
          round: 'paper',
          shooter: 'ines',
          date: '2026-11-25',
          session: '1',
          label: '1',
          condition: 'relaxed',
          game: '',
          cells: [
            { spot: 'top', shot: 'catch', makes: 1, attempts: 2 },
            { spot: 'Deep wing', shot: 'catch', makes: 1, attempts: 2 },
          ],
          first: null,
          nerves: null,
          note: '',
        },
      },
    ]);
    expect(unplacedSpots(book())).toEqual(['Deep wing']);
    await placeSpot(gym, 'Deep wing', { x: 6, y: 5 });
    expect(unplacedSpots(book())).toEqual([]);
  });
});
