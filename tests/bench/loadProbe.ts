/*
 * Stands in a page before anything else of it runs, and notes when the page could be used: when it has no button that
 * is still closed, and that has been drawn. Milliseconds since the navigation began.
 */

declare global {
  interface Window {
    /** Undefined until then. */
    usableAt?: number;
  }
}

const watcher = new MutationObserver(look);

function look(): void {
  const buttons = [...document.querySelectorAll('button')];
  const awaited = document.querySelector('#app') !== null && buttons.length === 0;
  if (!document.body || awaited || buttons.some((button) => button.disabled)) return;
  watcher.disconnect();
  requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.addEventListener('message', () => (window.usableAt = performance.now()), { once: true });
    port1.start();
    port2.postMessage(null);
  });
}

watcher.observe(document, { subtree: true, childList: true, attributes: true });

export {};
