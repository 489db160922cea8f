import { Desk } from './desk.ts';
import type { Said } from './messages.ts';

/* The worker in which the drop model runs. */

const { port1: heard, port2: spoken } = new MessageChannel();

const desk = new Desk({
  reply: (reply) => postMessage(reply),
  now: () => performance.now() / 1000,
  // A message to oneself comes after those that are waiting, and unlike a timer it is never held back.
  breathe: () =>
    new Promise((resolve) => {
      heard.addEventListener('message', () => resolve(), { once: true });
      heard.start();
      spoken.postMessage(null);
    }),
});

addEventListener('message', ({ data }: MessageEvent<Said>) => desk.hear(data));
