import { accessSync, constants, statSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const names = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'microsoft-edge',
];

/**
 * The Chromium, Chrome or Edge of this machine; null where there is none. DIEWRIGHT_BROWSER names one outright and
 * then no other is looked for.
 */
export function findBrowser(
  environment: NodeJS.ProcessEnv = process.env,
  platform = process.platform,
): string | null {
  const named = environment['DIEWRIGHT_BROWSER'];
  const candidates = named ? [named] : [...onPath(environment), ...usualPlaces(environment, platform)];
  return candidates.find(isProgram) ?? null;
}

/** What installs one, in a line. */
export const installBrowserHint =
  'No Chromium or Chrome found. Install it (Debian, Ubuntu: sudo apt-get install chromium; others: https://www.chromium.org) or name it in DIEWRIGHT_BROWSER.';

function onPath(environment: NodeJS.ProcessEnv): string[] {
  const folders = (environment['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  return names.flatMap((name) => folders.map((folder) => join(folder, name)));
}

function usualPlaces(environment: NodeJS.ProcessEnv, platform: NodeJS.Platform): string[] {
  if (platform === 'darwin') {
    return ['Google Chrome', 'Chromium', 'Microsoft Edge'].map(
      (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
    );
  }
  if (platform !== 'win32') return ['/snap/bin/chromium'];
  const roots = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap(
    (name) => environment[name] ?? [],
  );
  return roots.flatMap((root) => [
    join(root, 'Google\\Chrome\\Application\\chrome.exe'),
    join(root, 'Chromium\\Application\\chrome.exe'),
    join(root, 'Microsoft\\Edge\\Application\\msedge.exe'),
  ]);
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
