import { rngFromSeed } from '../../renderer/basics/chance.ts';
import type { Entry, Round } from '../../renderer/log/book.ts';
import type { PressureSetup } from '../../renderer/pressure/ingredients.ts';
import { PLAIN, play } from './modelWorld.ts';

/*
 * Five years of single shots, all of it in coin-ordered pairs, as the log holds it: four visits a week, five pairs a visit,
 * 24 shots a round. 249,600 shots in 10,400 rounds.
 */

const PAIRS = 5;
/** Shots of a round at each target of modelWorld.ts. */
const MIX = [3, 3, 3, 3, 3, 3, 2, 4];
const SHOTS = 24;
const MINUTE = 60_000;

/** Rated, with a mark, a stake and a clock under pressure. */
export function longRecord(weeks = 260): Round[] {
  const world = {
    ...PLAIN,
    weeks,
    singly: true,
    skillRise: 0.1,
    plan: (rng: ReturnType<typeof rngFromSeed>) =>
      Array.from({ length: PAIRS }, () =>
        rng.chance(0.5) ? (['relaxed', 'pressured'] as const) : (['pressured', 'relaxed'] as const),
      ).flat(),
    relaxedMix: MIX,
    pressuredMix: MIX,
    pressure: () => -0.35,
  };
  let named = 0;
  const name = (): string => {
    named += 1;
    return `01900000-0000-7000-8000-${named.toString(16).padStart(12, '0')}`;
  };
  let pair = name();
  return play(world, rngFromSeed(1)).rounds.map((round, at): Round => {
    const startedAt = Date.parse(round.date) + 10 * MINUTE * (at % (2 * PAIRS));
    if (at % 2 === 0) pair = name();
    return {
      ...round,
      id: name(),
      startedAt,
      endedAt: startedAt + 5 * MINUTE,
      entry: 'each-shot',
      first: SHOTS * (at % (2 * PAIRS)),
      nerves: round.condition === 'relaxed' ? (at * 3) % 5 : (at * 5) % 9,
      pair: { id: pair, place: at % 2 === 0 ? 1 : 2 },
      pressure: round.condition === 'relaxed' ? null : pressureOf(at),
      entries: round.entries.map((entry, shot): Entry => {
        const short = entry.kind === 'shot' && !entry.made && shot % 5 === 0;
        return { ...entry, id: name(), at: startedAt + 10_000 * shot, ...(short && { side: 'short' }) };
      }),
    };
  });
}

function pressureOf(at: number): PressureSetup {
  return {
    ingredients: at % 4 < 2 ? ['clock', 'stake', 'must-make'] : ['stake', 'must-make'],
    stake: 'Ten push-ups',
    mark: { makes: 12, chance: 0.5 },
    clock: at % 4 < 2 ? { kind: 'shot', seconds: 12 } : null,
    crowd: false,
    showChance: true,
    seed: at,
  };
}
