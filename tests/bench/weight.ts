import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

import { loadCold, withSeason } from './cold.ts';
import type { Outcome } from './outcome.ts';
import type { Stage } from './stage.ts';

/** JavaScript asked for until the first screen can be used, gzipped, against all that the app has. */
export async function weight(stage: Stage): Promise<Outcome[]> {
  const asked = new Set<string>();
  await withSeason(stage, async (profile) => {
    const stop = stage.onRequest((path) => asked.add(path));
    await loadCold(profile, stage, stage.appUrl);
    stop();
  });
  const first = [...asked].filter((path) => path.endsWith('.js')).map((path) => path.slice(1));
  // Workers are scripts of their own: that of the log carries SQLite's, that of the index may or may not come so early.
  const workers = first.filter((path) => /\/worker-/.test(path));
  const page = first.filter((path) => !workers.includes(path));
  const all = (await readdir(join(stage.files, 'assets')))
    .filter((name) => name.endsWith('.js'))
    .map((name) => `assets/${name}`);
  const everything = await weigh(stage, all);
  const outcome = async (what: string, paths: readonly string[]): Promise<Outcome> => ({
    what,
    unit: 'kB',
    figure: await weigh(stage, paths),
    rival: { what: 'all JavaScript of the app', figure: everything },
    n: `${paths.length} files`,
    limit: { on: 'figure', most: 300, by: 'agreed' },
  });
  if (page.length === 0 || workers.length === 0) throw new Error(`Asked for was: ${first.join(', ')}`);
  return [
    await outcome('JavaScript before the first screen, gzipped', page),
    await outcome('the same with the workers', first),
  ];
}

/** Kilobytes (1000 bytes) of files, gzipped one by one. */
async function weigh(stage: Stage, paths: readonly string[]): Promise<number> {
  const sizes = await Promise.all(
    paths.map(async (path) => gzipSync(await readFile(join(stage.files, path))).length),
  );
  return sizes.reduce((sum, size) => sum + size, 0) / 1000;
}
