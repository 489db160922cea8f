/**
 * What the page and the desktop shell say to each other: types alone, so that either side can be built without the other.
 * A page opened in a browser has no shell, and {@link Window.loudGymShell} is undefined there.
 */

/** The one channel from the page to the main process. */
export type KeepAwakeChannel = 'loud-gym:keep-awake';

/** What the shell offers the page. */
export interface ShellBridge {
  /**
   * Keeps the display from sleeping while a round is on, or lets it sleep again. Loading the page anew lets go too.
   *
   * @throws Error when the shell does not take the page for its own, or `on` is no boolean
   */
  readonly keepAwake: (on: boolean) => Promise<void>;
  /** The operating system, as Node names it: `win32`, `darwin` or `linux`. */
  readonly platform: string;
}

declare global {
  interface Window {
    readonly loudGymShell?: ShellBridge;
  }
}
