import type { Page } from 'playwright-core';

/** What the result screen says. */
export interface Result {
  /** The one sentence. */
  readonly headline: string;
  /** What goes with it. */
  readonly more: string;
  /**
   * By condition, large and small: `60 %` (or the bare count of a few shots) and `15 of 25 · 43 to 75 %`; with a verdict,
   * the percentage it rests on and `as shot: 150 of 250`.
   */
  readonly rates: Readonly<Record<string, readonly [large: string, small: string]>>;
  /** As shot: `Drop 12 points, from −11 to 34.`; empty where none can be told. */
  readonly drop: string;
  /** By spot and kind of shot: relaxed, pressured, drop. */
  readonly spots: Readonly<Record<string, readonly string[]>>;
  /** Newest first. */
  readonly rounds: readonly string[];
}

/** Reads the result screen. */
export async function readResult(page: Page): Promise<Result> {
  await page.locator('.round-list').last().waitFor();
  // The first answer of the drop model.
  await page.locator('.drop-sentence:not([aria-busy="true"])').waitFor();
  return page.evaluate(() => {
    const words = (element: Element | null | undefined): string =>
      (element?.textContent ?? '').replace(/\s+/g, ' ').trim();
    const all = (selector: string, within: ParentNode = document): Element[] => [
      ...within.querySelectorAll(selector),
    ];
    const cells = (row: Element): string[] => all('td', row).map(words);
    const drop = all('[aria-label]').map((element) => element.getAttribute('aria-label') ?? '');
    return {
      headline: words(document.querySelector('.drop-headline')),
      more: words(document.querySelector('.drop-sentence .lead')),
      rates: Object.fromEntries(
        all('.big-rate').map((rate): [string, [string, string]] => {
          const [large, small] = all('dd', rate).map(words);
          return [words(rate.querySelector('dt')).toLowerCase(), [large ?? '', small ?? '']];
        }),
      ),
      drop: drop.find((label) => /^Drop −?\d/.test(label)) ?? '',
      spots: Object.fromEntries(
        all('[aria-label="Numbers by spot"] tbody tr').map((row) => [
          words(row.querySelector('th')),
          cells(row),
        ]),
      ),
      rounds: all('.round-row').map((row) => [...row.children].map(words).join(' | ')),
    };
  });
}
