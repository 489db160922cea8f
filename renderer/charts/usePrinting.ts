import { useSyncExternalStore } from 'react';

let asked = false;

/**
 * Whether the page is being put on paper. A store, not a state: React then draws anew before the browser goes on to
 * the paper, which does not wait.
 */
export function usePrinting(): boolean {
  return useSyncExternalStore(subscribe, isPrinting, () => false);
}

function isPrinting(): boolean {
  return asked || matchMedia('print').matches;
}

function subscribe(changed: () => void): () => void {
  const begin = (): void => {
    asked = true;
    changed();
  };
  const end = (): void => {
    asked = false;
    changed();
  };
  const media = matchMedia('print');
  window.addEventListener('beforeprint', begin);
  window.addEventListener('afterprint', end);
  media.addEventListener('change', changed);
  return () => {
    window.removeEventListener('beforeprint', begin);
    window.removeEventListener('afterprint', end);
    media.removeEventListener('change', changed);
  };
}
