import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deserialize, serialize } from 'node:v8';
import { build } from 'vite';

import { longRecord } from './longRecord.ts';
import type { DeskUsed, Used } from './modelProbe.ts';
import type { Grown } from './modelSpeed.ts';

/** The model's timings, and what a process needs that only fits; the last length's cells. */
export interface Measured extends Grown {
  /** The full fit of the last length in a process of its own: of three, the fastest and the largest. */
  readonly fit: Used;
  /** The same process without the fit. */
  readonly without: Used;
  /** The fitting worker with five years in pairs. */
  readonly desk: DeskUsed;
}

/**
 * Times and weighs the model as it is shipped: built first, then run by Node alone. What runs the benchmarks compiles file
 * by file, and calls from file to file are slower then by a fifth. Cells and rounds come from files, so that simulating
 * them is no part of the memory.
 */
export async function measureModel(lengths: readonly number[]): Promise<Measured> {
  const folder = mkdtempSync(join(tmpdir(), 'drop-model-'));
  try {
    const probe = await builtProbe(folder);
    const run = (task: string, ...on: readonly string[]): unknown => {
      const result = join(folder, 'result');
      execFileSync(process.execPath, [probe, task, result, ...on], { stdio: 'inherit' });
      return deserialize(readFileSync(result));
    };
    const grown = run('growth', ...lengths.map(String)) as Grown;
    const cells = join(folder, 'cells');
    writeFileSync(cells, serialize(grown.data));
    const fits = [1, 2, 3].map(() => run('fit', cells) as Used);
    const fit = {
      seconds: Math.min(...fits.map(({ seconds }) => seconds)),
      megabytes: Math.max(...fits.map(({ megabytes }) => megabytes)),
    };
    const rounds = join(folder, 'rounds');
    writePieces(rounds);
    return { ...grown, fit, without: run('read', cells) as Used, desk: run('desk', rounds) as DeskUsed };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A hundred rounds in each, as they are sent to the worker. */
function writePieces(folder: string): void {
  mkdirSync(folder);
  const rounds = longRecord();
  for (let from = 0; from < rounds.length; from += 100) {
    const name = String(from).padStart(6, '0');
    writeFileSync(join(folder, name), serialize(rounds.slice(from, from + 100)));
  }
}

async function builtProbe(folder: string): Promise<string> {
  await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: fileURLToPath(new URL('modelProbe.ts', import.meta.url)),
      outDir: folder,
      emptyOutDir: false,
      rolldownOptions: { output: { entryFileNames: 'probe.mjs' } },
    },
  });
  return join(folder, 'probe.mjs');
}
