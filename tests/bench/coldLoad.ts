import { loadCold, withSeason } from './cold.ts';
import type { Outcome } from './outcome.ts';
import { percentile } from './samples.ts';
import type { Stage } from './stage.ts';

const LOADS = 12;

/** From a cold start to the first screen with all its buttons open and the log read, against an empty page. */
export function coldLoad(stage: Stage): Promise<Outcome[]> {
  return withSeason(stage, async (profile) => {
    const app: number[] = [];
    const empty: number[] = [];
    for (let load = 0; load < LOADS; load += 1) {
      app.push(await loadCold(profile, stage, stage.appUrl));
      empty.push(await loadCold(profile, stage, stage.emptyUrl));
    }
    const outcome = (what: string, share: number): Outcome => ({
      what,
      unit: 'ms',
      figure: percentile(app, share),
      rival: { what: 'an empty page', figure: percentile(empty, share) },
      n: String(LOADS),
      limit: { on: 'figure', most: 1500, by: 'agreed' },
    });
    return [
      outcome('cold load to the first usable screen, p50', 0.5),
      outcome('cold load to the first usable screen, p90', 0.9),
    ];
  });
}
