/** The scheme under which the app's own files are served; it gives the page a fixed, secure origin of its own. */
export const SCHEME = 'app';

/** The page the window opens. */
export const HOME = `${SCHEME}://bundle/index.html`;

/** Whether an address (a page, a file, an origin) is one of the app's own. */
export function isOwn(address: string): boolean {
  // An origin of this scheme reads "null" outside Chromium, so its two halves are compared.
  const url = URL.canParse(address) ? new URL(address) : null;
  return url?.protocol === `${SCHEME}:` && url.host === 'bundle';
}
