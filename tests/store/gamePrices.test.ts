import { describe, expect, it } from 'vitest';

import { isoDateAt } from '../../renderer/basics/days.ts';
import { CATALOGUE, type BuiltInGame } from '../../renderer/games/catalogue.ts';
import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { ladderOf } from '../../renderer/games/fair.ts';
import { ruleOf } from '../../renderer/games/ruleOf.ts';
import { solve } from '../../renderer/games/solver.ts';
import { EMPTY_BOOK, type Book } from '../../renderer/log/book.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { paceOf, timeFor } from '../../renderer/stats/pace.ts';
import { priceGame } from './priceGame.ts';
import { gamePrices } from '../../renderer/store/gamePrices.ts';
import { steady } from '../games/enumerate.ts';

const NOW = { at: Date.parse('2026-11-25T18:00Z'), zone: 60 };
const book = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
const [shooter = ''] = book.shooters.keys();
const prices = gamePrices(book, shooter, NOW);

function game(id: string): BuiltInGame {
  const found = CATALOGUE.find((one) => one.id === id);
  if (!found) throw new Error(`no game ${id}`);
  return found;
}

describe('the prices of many games', () => {
  it.each(CATALOGUE.map((one) => [one.id, one] as const))('%s: as one by one, with time enough', (_, one) => {
    const alone = priceGame(book, shooter, one.plan, one.stops, NOW);
    const { chance, length, inTime } = prices.price({ ...one, clock: null });
    expect(chance).toBeCloseTo(alone.chance, 9);
    expect(length.mean).toBeCloseTo(alone.length.mean, 9);
    expect(length.ninetieth).toBe(alone.length.ninetieth);
    expect(inTime).toBeNull();
  });

  it('count on the shooter’s own pace against a round clock', () => {
    const racks = game('racks-minute');
    const mine = [...book.rounds.values()].filter((round) => round.shooter === shooter);
    const { onClock } = paceOf(mine, isoDateAt(NOW.at, NOW.zone));
    const { ability } = prices.workOut(racks);
    const { rule } = ruleOf(racks.plan, racks.stops, 0);
    const whole = solve(rule, ability, timeFor(onClock, 60, 25, 'start'));
    const { chance, length, inTime } = prices.price(racks);
    expect(chance).toBeCloseTo(whole.standing([]).chance, 12);
    expect(length).toEqual(whole.length([]));
    expect(inTime?.pace).toEqual(onClock);
    expect(inTime?.enough).toMatchObject({ chance: prices.price({ ...racks, clock: null }).chance });
    expect(chance).toBeLessThan(inTime?.enough.chance ?? 0);
  });

  it('reckon with the usual pace where there is no record', () => {
    const { inTime, chance } = gamePrices(EMPTY_BOOK, 'nobody', NOW).price(game('racks-minute'));
    expect(inTime?.pace.own).toBe(false);
    expect(chance).toBeGreaterThan(0);
  });

  it('let an opponent who is not on court take no time', () => {
    const duel = game('duel-line');
    const clock = { kind: 'round', seconds: 600 } as const;
    // Ten minutes for at most fifteen shots of one's own: hardly ever short of time, which thirty would be.
    const { chance, inTime } = prices.price({ ...duel, clock });
    expect(inTime?.enough.chance ?? 0).toBeCloseTo(chance, 2);
  });

  it('leave a clock for each shot aside, which ends no game', () => {
    expect(prices.price(game('last-top')).inTime).toBeNull();
  });

  it('can be asked for a given strength', () => {
    const line = game('reach-line');
    const { solved } = prices.workOut(line, 0, 0.8);
    const { rule } = ruleOf(line.plan, line.stops, 0);
    expect(solved.standing([]).chance).toBeCloseTo(solve(rule, steady(0.8, 10)).standing([]).chance, 12);
    const duel = game('duel-line');
    // The opponent keeps their own.
    const even = prices.workOut({ ...duel, stops: duel.stops }, 0, 0.7).solved.standing([]).chance;
    expect(even).toBeGreaterThan(0.45);
    expect(even).toBeLessThan(0.5);
  });

  it('follow the coin for the double balls', () => {
    const racks = { ...game('racks-coin'), clock: null };
    const chances = [1, 2, 3, 4, 5].map((seed) => prices.price(racks, seed).chance);
    expect(new Set(chances).size).toBeGreaterThan(1);
  });

  it('are asked for spots of one’s own too', () => {
    const mine = {
      ...game('reach-line'),
      stops: [{ spot: 'Bleachers', shot: 'catch', attempts: 10 }],
    } as const;
    expect(prices.price(mine).chance).toBeLessThan(prices.price(game('reach-line')).chance);
  });

  it('change with the record, not with a tap', () => {
    const before = prices.price(game('reach-line'));
    const tapped: Book = { ...book, open: null };
    expect(gamePrices(tapped, shooter, NOW).price(game('reach-line'))).toEqual(before);
    const without = { ...book, rounds: new Map<string, never>() };
    expect(gamePrices(without, shooter, NOW).price(game('reach-line')).chance).not.toBe(before.chance);
  });
});

describe('a fair game', () => {
  it.each(['reach-arc', 'streak-line', 'lives-line', 'race-line', 'climb-arc', 'duel-arc', 'racks-minute'])(
    '%s comes as near to what is wanted as its steps allow',
    (id) => {
      const one = game(id);
      for (const wanted of [0.67, 0.5, 0.33]) {
        const { plan, chance } = prices.fair(one, wanted);
        expect(chance).toBe(prices.price({ ...one, plan }).chance);
        const nearest = Math.min(
          ...ladderOf(one.plan, one.stops).map((step) =>
            Math.abs(prices.price({ ...one, plan: step }).chance - wanted),
          ),
        );
        expect(Math.abs(chance - wanted)).toBeCloseTo(nearest, 9);
      }
    },
  );
});
