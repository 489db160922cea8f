import type { Locator, Page } from 'playwright-core';

import type { MissSide } from '../../renderer/log/events.ts';

/** How a shooter works the screen. */
export interface Hands {
  /** A button or a link. */
  press(target: Locator): Promise<void>;
  /** One answer of a question. */
  choose(answer: Locator): Promise<void>;
  /** One of several things that can be chosen together, or taken out again. */
  tick(box: Locator): Promise<void>;
  /** Writes into a field, over whatever stands there. */
  write(field: Locator, words: string): Promise<void>;
  make(): Promise<void>;
  miss(side?: MissSide): Promise<void>;
  /** So many of the shots at this spot went in. */
  count(makes: number): Promise<void>;
  undo(): Promise<void>;
  pause(): Promise<void>;
}

/** A finger on a touch screen. */
export function fingers(page: Page): Hands {
  const button = (name: string): Locator => page.getByRole('button', { name, exact: true });
  let lastShot = 0;
  /** The court takes two taps within 0.3 s for one; real shots are seconds apart. */
  const shot = async (target: Locator): Promise<void> => {
    await page.waitForTimeout(Math.max(0, lastShot + 305 - performance.now()));
    await target.tap();
    lastShot = performance.now();
  };
  return {
    press: (target) => target.tap(),
    choose: (answer) => answer.tap(),
    tick: (box) => box.tap(),
    write: async (field, words) => {
      await field.tap();
      await field.fill(words);
    },
    make: () => shot(button('Make')),
    miss: (side) => shot(button(side ? `Miss ${side[0]?.toUpperCase()}${side.slice(1)}` : 'Miss')),
    count: (makes) => shot(button(String(makes))),
    undo: () => page.getByRole('button', { name: /^Undo the last/ }).tap(),
    pause: () => button('Pause').tap(),
  };
}

/** No screen holds more places to stop at. */
const MOST_TABS = 200;

const MISS_KEYS: Readonly<Record<MissSide, string>> = {
  long: 'ArrowUp',
  short: 'ArrowDown',
  left: 'Shift+ArrowLeft',
  right: 'Shift+ArrowRight',
};

/** Keys alone: Tab to get there, Enter to press, arrows to choose, and the keys of the court. */
export function keys(page: Page): Hands {
  const key = (name: string): Promise<void> => page.keyboard.press(name);

  /** Tabs on until the focus stands there. @throws Error where it never gets there, or stands anywhere unseen */
  async function reach(target: Locator, there: (element: Element) => boolean): Promise<void> {
    for (let tabs = 0; tabs < MOST_TABS; tabs += 1) {
      if (await target.evaluate(there)) return;
      await key('Tab');
      const unseen = await page.evaluate(unseenFocus);
      if (unseen !== null) throw new Error(`The focus cannot be seen on ${unseen}`);
    }
    throw new Error(`The Tab key does not lead to ${String(target)}.`);
  }

  const hasFocus = (element: Element): boolean => element === document.activeElement;
  const questionHasFocus = (element: Element): boolean =>
    document.activeElement instanceof HTMLInputElement &&
    element instanceof HTMLInputElement &&
    document.activeElement.name === element.name;
  /** Answers from the one with the focus to this one; null where this one is chosen. */
  const stepsTo = (element: Element): number | null => {
    const answers = [...(element.closest('fieldset')?.querySelectorAll('input') ?? [])];
    const here = answers.findIndex((answer) => answer === document.activeElement);
    if (element instanceof HTMLInputElement && element.checked) return null;
    return answers.findIndex((answer) => answer === element) - here;
  };

  return {
    press: async (target) => {
      await target.waitFor();
      await reach(target, hasFocus);
      await key('Enter');
    },
    choose: async (answer) => {
      await answer.waitFor();
      await reach(answer, questionHasFocus);
      const steps = await answer.evaluate(stepsTo);
      if (steps === 0) await key('Space');
      for (let step = 0; step < Math.abs(steps ?? 0); step += 1) {
        await key((steps ?? 0) > 0 ? 'ArrowRight' : 'ArrowLeft');
      }
    },
    tick: async (box) => {
      await box.waitFor();
      await reach(box, hasFocus);
      await key('Space');
    },
    write: async (field, words) => {
      await field.waitFor();
      await reach(field, hasFocus);
      await key('ControlOrMeta+a');
      await page.keyboard.type(words);
    },
    make: () => key('ArrowRight'),
    miss: (side) => key(side ? MISS_KEYS[side] : 'ArrowLeft'),
    count: async (makes) => {
      await page.keyboard.type(String(makes));
      await key('Enter');
    },
    undo: () => key('Backspace'),
    pause: () => key('p'),
  };
}

/** What has the focus without a ring around it or around the words beside it; null where all is well. */
function unseenFocus(): string | null {
  const focused = document.activeElement;
  if (!focused || focused === document.body) return null;
  const ringed = [focused, focused.nextElementSibling, focused.parentElement].some((element) => {
    if (!element) return false;
    const { opacity, outlineStyle, outlineWidth } = getComputedStyle(element);
    return opacity !== '0' && outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
  });
  return ringed ? null : focused.outerHTML;
}
