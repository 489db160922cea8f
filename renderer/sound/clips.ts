import book from '../../assets/sound/clips.json';
import type { Seconds } from '../basics/units.ts';

/** A sound of the gym; `assets/sound/make-sounds.mjs` makes them all. */
export type ClipName = keyof typeof book.clips;

export interface Loop {
  readonly start: Seconds;
  readonly end: Seconds;
}

export const CLIP_NAMES = Object.keys(book.clips) as readonly ClipName[];

/** Clips that must be there before a countdown may start; the crowd can come later. */
export const SIGNALS: readonly ClipName[] = [
  'count-5',
  'count-4',
  'count-3',
  'count-2',
  'count-1',
  'go',
  'sound-check',
  'time-up',
  'beep-low',
  'beep-high',
  'buzzer',
];

/** Spoken clips: the crowd makes room for them. */
const SPOKEN: ReadonlySet<string> = new Set<ClipName>(SIGNALS.slice(0, 8));

export function isClipName(name: string): name is ClipName {
  return Object.hasOwn(book.clips, name);
}

export function isSpoken(name: string): boolean {
  return SPOKEN.has(name);
}

export function clipSeconds(name: ClipName): Seconds {
  return book.clips[name].seconds;
}

/** Where a clip loops without a seam; null for one that plays once. */
export function loopOf(name: ClipName): Loop | null {
  const clip = book.clips[name];
  return 'loop' in clip ? clip.loop : null;
}

/**
 * Where the encodings of a clip lie, below the folder of the page; the best first.
 *
 * @param plays whether the browser says that it plays files of an extension; it may be wrong, so all stay in the list
 */
export function filesOf(name: ClipName, plays: (extension: string) => boolean): string[] {
  const rank = (path: string) => (plays(path.slice(path.lastIndexOf('.') + 1)) ? 0 : 1);
  return book.clips[name].files.map(({ path }) => path).toSorted((one, other) => rank(one) - rank(other));
}
