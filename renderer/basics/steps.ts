import type { Probability } from './units.ts';

/** Runs work that comes in steps to its end. */
export function finish<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * Runs steps as a part of longer work.
 *
 * @yields their shares as shares of the whole, which this part takes from one share to another
 */
export function* partOf<T>(
  steps: Generator<Probability, T>,
  from: Probability,
  to: Probability,
): Generator<Probability, T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield from + (to - from) * step.value;
  }
}
