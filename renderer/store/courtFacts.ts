import type { RoundId } from '../basics/ids.ts';
import type { Seconds } from '../basics/units.ts';
import type { Fact } from '../log/facts.ts';

/* What the court adds to the facts of a tap before they go to the log. */

/** An entry remembers the round clock, so that a round broken off by a crash goes on with the right time. */
export function withClock(fact: Fact, clockLeft: Seconds | null): Fact {
  if (clockLeft === null) return fact;
  if (fact.type === 'ShotTaken') return { ...fact, body: { ...fact.body, clockLeft } };
  if (fact.type === 'StopCounted') return { ...fact, body: { ...fact.body, clockLeft } };
  return fact;
}

/** An ending remembers it too, for the round that had the clock. */
export function atClock(fact: Fact, round: RoundId, clockLeft: Seconds | null): Fact {
  if (fact.type !== 'RoundEnded' || fact.body.round !== round) return fact;
  return { ...fact, body: { ...fact.body, clockLeft } };
}

/** Whether a fact hands the turn on to another shooter. */
export function passes({ type }: Fact): boolean {
  return type === 'TurnPassed';
}
