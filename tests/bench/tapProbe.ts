import { bareCommit, bareFooting } from './bareClient.ts';

/*
 * Stands in the app's page and looks on: when a tap was made, when its screen stood, when it was acknowledged. It reads
 * what is on the screen and nothing else; the app knows nothing of it.
 */

/** One tap. Milliseconds since the system took it in (the event's own time stamp). */
export interface Tap {
  /** The first frame with the changed screen was worked out and handed on to be drawn. */
  readonly drawn: number;
  /** The count of acknowledged shots, in the document, took it in. */
  readonly acknowledged: number;
  /** The frame was on the display, in steps of 8 ms (W3C Event Timing); null below 16 ms. */
  readonly displayed: number | null;
}

interface Seen {
  readonly event: Event;
  readonly shownBefore: string;
  readonly countedBefore: string;
  changed: boolean;
  drawn: number | null;
  acknowledged: number | null;
}

const text = (selector: string): string => document.querySelector(selector)?.textContent ?? '';
/** Where to shoot from and which shot it is: goes on with the tap. */
const shown = (): string => `${text('.court-where h1')} ${text('.court-where .lead')}`;
/** Shots that the log has acknowledged. */
const counted = (): string => text('.going-on dt');

const displayed = new Map<string, number>();
const nameOf = ({ type, timeStamp }: Pick<Event, 'type' | 'timeStamp'>): string => `${type} ${timeStamp}`;
let tap: Seen | null = null;

function begin(event: Event): void {
  const before = { shownBefore: shown(), countedBefore: counted() };
  tap = { event, ...before, changed: false, drawn: null, acknowledged: null };
}

function look(): void {
  const seen = tap;
  if (!seen) return;
  if (!seen.changed && shown() !== seen.shownBefore) {
    seen.changed = true;
    requestAnimationFrame(() =>
      afterFrame(() => {
        seen.drawn = since(seen.event);
      }),
    );
  }
  if (counted() !== seen.countedBefore) seen.acknowledged ??= since(seen.event);
}

function since(event: Event): number {
  return performance.now() - event.timeStamp;
}

/** A message sent while a frame is prepared arrives when it has been worked out. */
function afterFrame(then: () => void): void {
  const { port1, port2 } = new MessageChannel();
  port1.addEventListener('message', then, { once: true });
  port1.start();
  port2.postMessage(null);
}

addEventListener('pointerdown', begin, { capture: true });
addEventListener('keydown', begin, { capture: true });
new MutationObserver(look).observe(document.body, { subtree: true, childList: true, characterData: true });
new PerformanceObserver((list) => {
  for (const { name, startTime, duration } of list.getEntries()) {
    displayed.set(nameOf({ type: name, timeStamp: startTime }), duration);
  }
}).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit);

const probe = {
  bareFooting,
  bareCommit,
  /** The last tap, once there is all of it. */
  last: async (): Promise<Tap> => {
    const deadline = performance.now() + 5000;
    while (performance.now() < deadline) {
      const { event, drawn = null, acknowledged = null } = tap ?? {};
      if (event && drawn !== null && acknowledged !== null) {
        return { drawn, acknowledged, displayed: displayed.get(nameOf(event)) ?? null };
      }
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    throw new Error('A tap was not shown and acknowledged within 5 seconds.');
  },
  /** Milliseconds between frames, over so many of them. */
  frames: async (count: number): Promise<number[]> => {
    const starts: number[] = [];
    while (starts.length <= count) starts.push(await new Promise(requestAnimationFrame));
    return starts.slice(1).map((start, at) => start - (starts[at] ?? 0));
  },
};

declare global {
  interface Window {
    tapProbe: typeof probe;
  }
}

window.tapProbe = probe;
