import type { MissSide } from '../../log/events.ts';

/** Where a miss went, in a word. */
export const MISS_SIDE_WORDS: Readonly<Record<MissSide, string>> = {
  short: 'Short',
  long: 'Long',
  left: 'Left',
  right: 'Right',
};
