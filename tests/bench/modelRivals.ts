import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

import type { ModelData } from '../../renderer/stats/model/modelData.ts';
import { cellsCsv, fitStatic, type Told, twelveWeeks } from '../stats/model/staticModel.ts';

/*
 * R's lme4 and mgcv on the same cells. Needs Rscript with lme4, mgcv and jsonlite (Debian: r-base-core r-cran-lme4
 * r-cran-mgcv r-cran-jsonlite).
 *
 *     npx tsx tests/bench/modelRivals.ts > tests/fixtures/model/compare.json    stores the results anew
 */

const SCRIPT = fileURLToPath(new URL('../fixtures/model/compare.R', import.meta.url));

export interface RivalFit extends Told {
  readonly daySd: number;
  readonly seconds: number;
  readonly logLik?: number;
}

export interface Rivals {
  readonly glmer?: RivalFit;
  readonly gam?: RivalFit;
  readonly glmerFull?: { readonly pressured: number; readonly se: number; readonly seconds: number };
  readonly bam?: { readonly seconds: number };
  readonly versions: Readonly<Record<string, string>>;
}

/** Whether Rscript with the three packages is on this machine. */
export function hasR(): boolean {
  const check =
    'quit(status = !all(sapply(c("lme4", "mgcv", "jsonlite"), requireNamespace, quietly = TRUE)))';
  return spawnSync('Rscript', ['-e', check], { stdio: 'ignore' }).status === 0;
}

/** Runs compare.R on the cells of a record. */
export function runR(data: ModelData, fits: readonly ('glmer' | 'gam' | 'glmer-full' | 'bam')[]): Rivals {
  const folder = mkdtempSync(join(tmpdir(), 'drop-model-'));
  try {
    const file = join(folder, 'cells.csv');
    writeFileSync(file, cellsCsv(data));
    return JSON.parse(execFileSync('Rscript', [SCRIPT, file, ...fits], { encoding: 'utf8' })) as Rivals;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  if (hasR()) {
    const data = twelveWeeks();
    const rivals = runR(data, ['glmer', 'gam']);
    console.log(JSON.stringify(rivals, null, 2));
    for (const name of ['glmer', 'gam'] as const) {
      const theirs = rivals[name];
      if (!theirs) continue;
      const ours = fitStatic(data, theirs.daySd);
      for (const [term, estimate] of Object.entries(theirs.estimate)) {
        console.error(name, term, estimate, ours.estimate[term], theirs.se[term], ours.se[term]);
      }
    }
  } else {
    console.error('Rscript with lme4, mgcv and jsonlite is not here; nothing was compared.');
    process.exitCode = 1;
  }
}
