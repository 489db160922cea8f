import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const ON_PATH = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge-stable',
  'microsoft-edge',
];

const MAC = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];

const WINDOWS = [
  String.raw`Chromium\Application\chrome.exe`,
  String.raw`Google\Chrome\Application\chrome.exe`,
  String.raw`Microsoft\Edge\Application\msedge.exe`,
];

const APT_GET = '/usr/bin/apt-get';

/**
 * The Chromium to test with: the one that CHROMIUM_PATH names, else the system's Chromium, Chrome or Edge, else, as root
 * on Debian, a fresh installation.
 *
 * @throws Error that says what to install; a test in a browser is never skipped
 */
export function findBrowser(): string {
  const named = process.env['CHROMIUM_PATH'];
  if (named) {
    if (existsSync(named)) return named;
    throw new Error(`CHROMIUM_PATH names ${named}, and there is no such file.`);
  }
  const found = places().find((place) => existsSync(place)) ?? installOnDebian();
  if (found) return found;
  throw new Error(
    'The tests in a browser need Chromium, Chrome or Edge. Install one, or set CHROMIUM_PATH to its program file.',
  );
}

function places(): string[] {
  const { env, platform } = process;
  const onPath = (env['PATH'] ?? '')
    .split(delimiter)
    .flatMap((folder) => ON_PATH.map((name) => join(folder, name)));
  if (platform === 'darwin') return [...MAC, ...onPath];
  if (platform !== 'win32') return onPath;
  const folders = [env['PROGRAMFILES'], env['PROGRAMFILES(X86)'], env['LOCALAPPDATA']];
  return folders.flatMap((folder) => (folder ? WINDOWS.map((name) => join(folder, name)) : []));
}

function installOnDebian(): string | null {
  if (!existsSync('/etc/debian_version') || !existsSync(APT_GET) || process.getuid?.() !== 0) return null;
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  execFileSync(APT_GET, ['update'], { stdio: 'inherit', env });
  execFileSync(APT_GET, ['install', '-y', '--no-install-recommends', 'chromium'], {
    stdio: 'inherit',
    env,
  });
  return places().find((place) => existsSync(place)) ?? null;
}
