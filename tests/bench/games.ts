import { solve } from '../../renderer/games/solver.ts';
import { openBrowser } from '../tools/browser.ts';
import { byRecursion, longPlay, sizedGames, type Sized } from './gameWorld.ts';
import type { Outcome } from './outcome.ts';
import { median, percentile } from './samples.ts';
import { loadSeason, pageOf, type Stage } from './stage.ts';

/*
 * Games: the list of all of them with their chances, as it opens in a real browser, and the solver after every shot. Each
 * shot is taken at its dearest: solved anew, as it is with a clock that runs, then asked for chance and leverage.
 */

const NODES = 15;
const SHOTS = 50;
const LENGTHS = [10, 25, 50, 100, 200] as const;
const RUNS = 7;
const OPENINGS = 3;
/** A browser just started, and the study that runs beside the page, are left alone for so long. */
const SETTLE_MS = 10_000;

export async function gameOutcomes(stage: Stage): Promise<Outcome[]> {
  return [...solverOutcomes(), ...(await listOutcomes(stage))];
}

function solverOutcomes(): Outcome[] {
  const games = sizedGames(SHOTS, NODES);
  for (const game of games) everyShot(game);
  // A busy machine stops whatever runs for some milliseconds: of every shot the median of so many runs.
  const runs = Array.from({ length: RUNS }, () => games.map(everyShot));
  const shots = games.map((_, game) =>
    (runs[0]?.[game] ?? []).map((__, shot) => median(runs.map((run) => run[game]?.[shot] ?? NaN))),
  );
  const families = games.map(({ name }, at) => ({ name, figure: percentile(shots[at] ?? [], 0.99) }));
  const dearest = families.reduce((worst, one) => (one.figure > worst.figure ? one : worst));
  const rival = {
    what: 'memoised recursion, day by day, dearest family',
    figure: Math.max(...games.map((game) => timeOf(() => byRecursion(game)))),
  };
  const grown = growth();
  print(grown);
  const first = grown.reduce((worst, one) => (at50(one) > at50(worst) ? one : worst));
  return [
    {
      what: `chance and leverage after a shot, ${SHOTS} shots, ${NODES} days, all families, p99`,
      unit: 'ms',
      figure: percentile(shots.flat(), 0.99),
      rival,
      n: `${shots.flat().length} shots, each the median of ${RUNS}`,
      limit: { on: 'figure', most: 5, by: 'agreed' },
    },
    {
      what: `the same for the dearest family (${dearest.name}), p99`,
      unit: 'ms',
      figure: dearest.figure,
      rival,
      n: `${shots[families.indexOf(dearest)]?.length ?? 0} shots, each the median of ${RUNS}`,
      limit: { on: 'figure', most: 16, by: 'agreed' },
    },
    {
      what: `a game of ${SHOTS} shots solved for the first time, dearest family (${first.name})`,
      unit: 'ms',
      figure: at50(first),
      rival,
      n: String(RUNS),
      limit: { on: 'figure', most: 16, by: 'agreed' },
    },
  ];
}

function at50({ times }: ReturnType<typeof growth>[number]): number {
  return times[LENGTHS.indexOf(SHOTS)] ?? Number.NaN;
}

/** Milliseconds after each shot of a long play. */
function everyShot(game: Sized): number[] {
  const results = longPlay(game);
  return Array.from({ length: results.length + 1 }, (_, shot) => {
    const played = results.slice(0, shot);
    return timeOf(() => solve(game.rule, game.ability).standing(played));
  });
}

/** Milliseconds in which a game is solved for the first time, by family and by shots: medians. */
function growth(): { readonly name: string; readonly times: readonly number[] }[] {
  const columns = LENGTHS.map((n) => {
    // What is known of a rule is kept, so each time it is a new one.
    const runs = Array.from({ length: RUNS }, () =>
      sizedGames(n, NODES).map((game) => timeOf(() => solve(game.rule, game.ability).standing([]))),
    );
    return sizedGames(n, NODES).map((_, game) => median(runs.map((run) => run[game] ?? NaN)));
  });
  return sizedGames(LENGTHS[0], NODES).map(({ name }, game) => ({
    name,
    times: columns.map((column) => column[game] ?? NaN),
  }));
}

function print(rows: ReturnType<typeof growth>): void {
  console.log(`  ms to solve, by shots ${LENGTHS.map((n) => String(n).padStart(9)).join('')}`);
  for (const { name, times } of rows) {
    console.log(`  ${name.padEnd(22)}${times.map((time) => time.toFixed(2).padStart(9)).join('')}`);
  }
}

/** Opens the list in browsers just started, each once, from the bench. */
async function listOutcomes(stage: Stage): Promise<Outcome[]> {
  const first: number[] = [];
  const again: number[] = [];
  for (let opening = 0; opening < OPENINGS; opening += 1) {
    const browser = await openBrowser();
    try {
      const page = await pageOf(browser);
      await loadSeason(page, stage.appUrl);
      await page.waitForTimeout(SETTLE_MS);
      const open = (place: string, until: string): Promise<number> =>
        page.evaluate(`(${OPEN})(${JSON.stringify(place)}, ${JSON.stringify(until)})`);
      first.push(await open('games', 'chances'));
      await open('bench', 'bench');
      again.push(await open('games', 'chances'));
    } finally {
      await browser.close();
    }
  }
  return [
    {
      what: 'opening the list of 30 games with their chances, first time, median',
      unit: 'ms',
      figure: median(first),
      rival: { what: 'opened again', figure: median(again) },
      n: `${OPENINGS} browsers`,
      limit: { on: 'figure', most: 100, by: 'agreed' },
    },
  ];
}

/** From the change of the address until what is asked for stands in a frame that was worked out. Runs in the page. */
const OPEN = `(place, until) => new Promise((resolve) => {
  const begun = performance.now();
  const there = () => {
    if (until === 'bench') return document.querySelector('.bench') !== null;
    const figures = [...document.querySelectorAll('.game-chance .figure')];
    return figures.length === 30 && figures.every((figure) => figure.textContent !== '–');
  };
  const watcher = new MutationObserver(() => {
    if (!there()) return;
    watcher.disconnect();
    requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - begun)));
  });
  watcher.observe(document.body, { subtree: true, childList: true, characterData: true });
  location.hash = '#/' + place;
})`;

function timeOf(work: () => unknown): number {
  const begun = performance.now();
  work();
  return performance.now() - begun;
}
