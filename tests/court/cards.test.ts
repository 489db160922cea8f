import { describe, expect, it } from 'vitest';

import { attemptsOn, MOST_ATTEMPTS, MOST_STOPS, STANDARD_CARDS } from '../../renderer/court/cards.ts';
import { isShotKind, isSpot, type ShotKind } from '../../renderer/court/spots.ts';
import { BODIES } from '../../renderer/log/events.ts';
import * as v from 'valibot';

const byId = (id: string) => STANDARD_CARDS.find((card) => card.id === id)?.stops ?? [];
const shots = (id: string, kind: ShotKind) => attemptsOn(byId(id).filter((stop) => stop.shot === kind));

describe('the standard cards', () => {
  it('are threes, pull-ups, free throws and all of it', () => {
    expect(byId('threes-25').map((stop) => stop.attempts)).toEqual([5, 5, 5, 5, 5]);
    expect(shots('threes-25', 'catch')).toBe(25);
    expect(shots('pull-ups-10', 'dribble-left')).toBe(5);
    expect(shots('pull-ups-10', 'dribble-right')).toBe(5);
    expect(attemptsOn(byId('free-throws-10'))).toBe(10);
    expect(attemptsOn(byId('free-throws-20'))).toBe(20);
    expect(attemptsOn(byId('whole-45'))).toBe(45);
  });
  it('call themselves by the shots they hold', () => {
    for (const { id, stops } of STANDARD_CARDS) expect(id).toMatch(new RegExp(`-${attemptsOn(stops)}$`));
  });
  it('have names and ids of their own', () => {
    expect(new Set(STANDARD_CARDS.map((card) => card.id)).size).toBe(STANDARD_CARDS.length);
    expect(new Set(STANDARD_CARDS.map((card) => card.name)).size).toBe(STANDARD_CARDS.length);
  });
  it.each(STANDARD_CARDS)('$name keeps to the limits of the log', ({ id, name, stops }) => {
    expect(stops.length).toBeLessThanOrEqual(MOST_STOPS);
    for (const stop of stops) {
      expect(isSpot(stop.spot)).toBe(true);
      expect(isShotKind(stop.shot)).toBe(true);
      expect(stop.attempts).toBeLessThanOrEqual(MOST_ATTEMPTS);
    }
    expect(v.safeParse(BODIES.CardMade, { card: id, name, stops }).success).toBe(true);
  });
});
