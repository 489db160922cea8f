import type { Page } from 'playwright-core';

/** What the court screen shows. */
export interface Court {
  /** The spot, in words. */
  readonly spot: string;
  /** The shot that comes next, from 1. */
  readonly shot: number;
  /** Shots on the whole card, or the most there can be. */
  readonly of: number;
  /** The large figures by their words: `{ 'made of 6': '4' }`. */
  readonly figures: Readonly<Record<string, string>>;
  /** Whoever shoots now, and both sides of a duel: `['▸ Ada 2', 'Ben 1']`; empty where one plays alone. */
  readonly players: readonly string[];
  /** The shots at this spot: `●` make, `○` miss, `-` a turn without a shot, `.` to come. */
  readonly dots: string;
}

/**
 * Reads the court as it stands; what was tapped a moment ago may still be on its way:
 * `expect.poll(court)` waits for it.
 */
export function readCourt(page: Page): Promise<Court> {
  return page.evaluate(() => {
    const text = (selector: string, within: ParentNode = document): string =>
      within.querySelector(selector)?.textContent ?? '';
    const [, shot, of] = /shot (\d+)(?: of |, at most )(\d+)/.exec(text('.court-where .lead')) ?? [];
    const signs: Record<string, string> = { make: '●', miss: '○', 'no shot': '-', 'to come': '.' };
    return {
      spot: text('.court-where h1'),
      shot: Number(shot),
      of: Number(of),
      figures: Object.fromEntries(
        [...document.querySelectorAll('.going-on-figure')].map((figure) => [
          text('dt', figure),
          text('dd', figure),
        ]),
      ),
      players: [...document.querySelectorAll('.duel-side, .group-table li')].map((player) =>
        ['.duel-name, .group-name', '.duel-score']
          .map((part) =>
            text(part, player)
              .replace(/ (?:shoots|points)$/, '')
              .trim(),
          )
          .filter((words) => words !== '')
          .join(' '),
      ),
      dots: [...document.querySelectorAll('.dot')].map((dot) => signs[dot.textContent]).join(''),
    };
  });
}

/** The figures a countdown shows from now on, in order, until shots count; with the seconds from the first to then. */
export async function watchCountdown(
  page: Page,
): Promise<() => Promise<{ shown: string[]; seconds: number }>> {
  const watching = await page.evaluateHandle(() => {
    const shown: string[] = [];
    let begun = 0;
    const ended = new Promise<number>((resolve) => {
      const look = (): void => {
        const figure = document.querySelector('.countdown-figure')?.textContent;
        if (figure !== undefined && shown.at(-1) !== figure) {
          begun ||= performance.now();
          shown.push(figure);
        }
        if (begun > 0 && figure === undefined) {
          watcher.disconnect();
          resolve((performance.now() - begun) / 1000);
        }
      };
      const watcher = new MutationObserver(look);
      watcher.observe(document.body, { subtree: true, childList: true, characterData: true });
    });
    return { shown, ended };
  });
  return () => watching.evaluate(async ({ shown, ended }) => ({ seconds: await ended, shown }));
}
