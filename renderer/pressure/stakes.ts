/* What may be on the line, for whom, and how far it may grow. */

/** A debt is doubled at most so often, then it is settled. Our own choice. */
export const MOST_DOUBLES = 2;

/** A round that is shot for double or nothing. */
export interface Doubles {
  /** The round that decided the debt so far. */
  readonly round: string;
  /** 1 for the first doubling, 2 for the second. */
  readonly times: 1 | 2;
}

/** How many times the stake is owed after so many doublings. */
export function timesOwed(doublings: number): number {
  return 2 ** doublings;
}

/** Whether stakes are open to a shooter, as they told it. */
export interface StakeAge {
  /** Left out where nobody told. */
  readonly under18?: boolean;
  /** An adult allowed small favours. */
  readonly favours?: boolean;
}

/** `open`: anything but money. `favours`: one from {@link FAVOURS}. `off`: nothing. */
export type StakePolicy = 'open' | 'favours' | 'off';

/** What may be on the line in a round these shooters play. With someone under 18 in a group there is nothing. */
export function stakePolicy(shooters: readonly StakeAge[]): StakePolicy {
  const young = shooters.filter(({ under18 }) => under18 === true);
  if (young.length === 0) return 'open';
  return shooters.length === 1 && young[0]?.favours === true ? 'favours' : 'off';
}

/** Small favours: a minute's work, in front of everybody, nothing to be ashamed of. */
export const FAVOURS = [
  'Carries the balls',
  'Fills the water bottles',
  'Puts the cones away',
  'Picks the warm-up song',
  'Chooses the next card',
  'Pumps up the balls',
] as const;

/** Whether a stake may stand under a policy; money is another matter (money.ts). */
export function fitsPolicy(stake: string | null, policy: StakePolicy): boolean {
  if (stake === null || policy === 'open') return true;
  return policy === 'favours' && FAVOURS.some((favour) => favour === stake);
}
