import type { Seconds } from '../basics/units.ts';
import { filesOf, loopOf, type ClipName } from './clips.ts';
import { onsetOf } from './onset.ts';

/** A clip, ready to sound. */
export interface Clip {
  readonly buffer: AudioBuffer;
  /** How long after its start it is heard; a loop counts as heard at once. */
  readonly onset: Seconds;
}

export interface ClipBank {
  /** The clip, where it is loaded. */
  get(name: ClipName): Clip | null;
  /** Loads a clip once; a failure is tried again when it is next asked for. @returns null where it cannot be had */
  load(name: ClipName): Promise<Clip | null>;
}

/** What a bank needs of its surroundings. */
export interface ClipSource {
  /** Whether files of this extension play here. */
  plays(extension: string): boolean;
  fetch(path: string): Promise<ArrayBuffer>;
  decode(bytes: ArrayBuffer): Promise<AudioBuffer>;
}

/**
 * Loads and decodes clips, each once. Howler loads sounds too, but keeps what it decoded to itself, and a source that is
 * to start at an exact time needs it.
 */
export function clipBank(from: ClipSource): ClipBank {
  const ready = new Map<ClipName, Clip>();
  const coming = new Map<ClipName, Promise<Clip | null>>();

  async function fetchClip(name: ClipName): Promise<Clip | null> {
    const paths = filesOf(name, (extension) => from.plays(extension));
    const buffer = await firstPlayable(paths, from);
    const clip = buffer && { buffer, onset: loopOf(name) ? 0 : onsetOf(buffer) };
    if (clip) ready.set(name, clip);
    coming.delete(name);
    return clip;
  }

  return {
    get: (name) => ready.get(name) ?? null,
    load: (name) => {
      const loaded = ready.get(name);
      if (loaded) return Promise.resolve(loaded);
      const loading = coming.get(name) ?? fetchClip(name);
      coming.set(name, loading);
      return loading;
    },
  };
}

/** Browsers err about what they play, so each file is tried in turn. */
async function firstPlayable(paths: readonly string[], from: ClipSource): Promise<AudioBuffer | null> {
  for (const path of paths) {
    try {
      // One after the other: the second is needed only where the first fails.
      // oxlint-disable-next-line no-await-in-loop
      return await from.decode(await from.fetch(path));
    } catch {
      // The next file may do; where none does, the caller gets null.
    }
  }
  return null;
}
