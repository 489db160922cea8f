import { readFileSync } from 'node:fs';

import type { Seconds } from '../../renderer/basics/units.ts';

/**
 * Seconds that the main thread has been running, as Linux tells them, its pauses for garbage collection among them. What else
 * the machine does is no part of it. Where that cannot be told it is the clock; on an idle machine the two are the same.
 */
export function running(): Seconds {
  try {
    const [nanoseconds] = readFileSync(`/proc/self/task/${process.pid}/schedstat`, 'utf8').split(' ');
    return Number(nanoseconds) / 1e9;
  } catch {
    return performance.now() / 1000;
  }
}
