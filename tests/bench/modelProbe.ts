import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';

import type { Round } from '../../renderer/log/book.ts';
import type { ModelData } from '../../renderer/stats/model/modelData.ts';
import { onDesk, type OnDesk, tellDesk } from './deskSpeed.ts';
import { fitted, growth } from './modelSpeed.ts';

/*
 * What runs in the processes of modelProcess.ts. Call: a task, the file for its result, and what it works on: `growth`
 * with numbers of weeks, `fit` or `read` with a file of cells, `desk` with a folder of rounds in pieces.
 */

/** What one process used. */
export interface Used {
  /** Memory at its highest, megabytes. */
  readonly megabytes: number;
  /** Seconds of the fit, which nothing has warmed up; 0 without one. */
  readonly seconds: number;
}

/** What the fitting worker needs for a record, and how long it takes. */
export interface DeskUsed extends OnDesk {
  /** Memory at its highest, rounds and all, megabytes. */
  readonly megabytes: number;
  /** When it was told of the rounds, and had done nothing yet. */
  readonly told: number;
}

async function work(task: string, on: readonly string[]): Promise<unknown> {
  if (task === 'growth') return growth(on.map(Number));
  if (task === 'desk') {
    const desk = tellDesk(piecesIn(on[0] ?? ''));
    const told = highest() / 1024;
    const used = await onDesk(desk);
    return { ...used, told, megabytes: highest() / 1024 } satisfies DeskUsed;
  }
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

/** One piece after the other, as messages come in. */
function* piecesIn(folder: string): Generator<readonly Round[]> {
  for (const name of readdirSync(folder).toSorted()) {
    yield deserialize(readFileSync(join(folder, name))) as Round[];
  }
}

const [, , task = '', result = '', ...on] = process.argv;
writeFileSync(result, serialize(await work(task, on)));
