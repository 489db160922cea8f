import { readFileSync, writeFileSync } from 'node:fs';
import { deserialize, serialize } from 'node:v8';

import type { ModelData } from '../../renderer/stats/model/modelData.ts';
import { fitted, growth } from './modelSpeed.ts';

/*
 * What runs in the processes of modelProcess.ts. Call: a task, the file for its result, and what it works on: `growth`
 * with numbers of weeks, `fit` or `read` with a file of cells.
 */

/** What one process used. */
export interface Used {
  /** Memory at its highest, megabytes. */
  readonly megabytes: number;
  /** Seconds of the fit, which nothing has warmed up; 0 without one. */
  readonly seconds: number;
}

function work(task: string, on: readonly string[]): unknown {
  if (task === 'growth') return growth(on.map(Number));
  const data = deserialize(readFileSync(on[0] ?? '')) as ModelData;
  const seconds = task === 'fit' ? fitted(data, {}).seconds : 0;
  return { megabytes: highest() / 1024, seconds } satisfies Used;
}

/** Kilobytes. Linux lets a process inherit the highest mark of the one that started it, but not in this file. */
function highest(): number {
  try {
    const line = /^VmHWM:\s*(\d+) kB/mu.exec(readFileSync('/proc/self/status', 'utf8'));
    if (line) return Number(line[1]);
  } catch {
    // Not Linux.
  }
  return process.resourceUsage().maxRSS;
}

const [, , task = '', result = '', ...on] = process.argv;
writeFileSync(result, serialize(work(task, on)));
