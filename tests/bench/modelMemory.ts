import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deserialize, serialize } from 'node:v8';

import type { ModelData } from '../../renderer/stats/model/modelData.ts';
import { fitted } from './modelSpeed.ts';

/*
 * What a fit needs, in a process that does nothing else: it reads the cells from a file, so that the simulated rounds are
 * not counted. Node and the compiler's loader are counted; the process without the fit says how much that is.
 */

/** Of one process. */
export interface Used {
  /** Memory at its highest, megabytes. */
  readonly megabytes: number;
  /** Of the fit, which nothing has warmed up; 0 without one. */
  readonly seconds: number;
}

/** The full fit of a record in a process of its own, and the same process without it. */
export function inAProcessOfItsOwn(data: ModelData): { fit: Used; without: Used } {
  const folder = mkdtempSync(join(tmpdir(), 'drop-model-'));
  try {
    const file = join(folder, 'cells');
    writeFileSync(file, serialize(data));
    const run = (task: string): Used =>
      JSON.parse(
        execFileSync(process.execPath, ['--import', 'tsx', fileURLToPath(import.meta.url), task, file], {
          encoding: 'utf8',
        }),
      ) as Used;
    return { fit: run('fit'), without: run('read') };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [, , task, file = ''] = process.argv;
  const data = deserialize(readFileSync(file)) as ModelData;
  const seconds = task === 'fit' ? fitted(data, {}).seconds : 0;
  // Kilobytes from the system.
  const used: Used = { megabytes: process.resourceUsage().maxRSS / 1024, seconds };
  console.log(JSON.stringify(used));
}
