import { uuidV7, type RoundId } from '../../renderer/basics/ids.ts';
import { rngFromSeed } from '../../renderer/basics/chance.ts';
import type { EventOf } from '../../renderer/log/envelope.ts';

/** Shots as a round would log them: ids of their own, a second apart. The same seed gives the same shots. */
export function someShots(count: number, seed = 1): EventOf<'ShotTaken'>[] {
  const rng = rngFromSeed(seed);
  const start = Date.UTC(2026, 10, 25, 18);
  const round: RoundId = uuidV7(start, rng.bytes());
  return Array.from({ length: count }, (_, shot) => {
    const at = start + 1000 * shot;
    return {
      id: uuidV7(at, rng.bytes()),
      at,
      zone: 60,
      device: 'a tablet',
      type: 'ShotTaken',
      v: 1,
      body: { round, stop: shot % 5, made: rng.chance(0.4), side: null },
    };
  });
}
