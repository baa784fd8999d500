import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { findBrowser, installBrowserHint } from './find-browser';
import { hasDisplay, openAppWindow } from './open-app-window';
import { serveLocalWindow } from './serve-local-window';

/**
 * The window on a machine without the desktop shell: `local-window [FILE] [--out FOLDER] [--wait-minutes N]`. Ends when
 * the window is closed. With no display or no browser it prints the address and stays until it is ended; with
 * `--wait-minutes` it also ends when nobody has opened the address by then.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    out: { type: 'string', default: 'out' },
    'wait-minutes': { type: 'string' },
    'address-only': { type: 'boolean', default: false },
  },
});

void run();

async function run(): Promise<void> {
  let waiting: NodeJS.Timeout | undefined;
  const window = await serveLocalWindow({
    pageFolder: join(__dirname, '../window'),
    outFolder: values.out,
    openPath: positionals[0] ?? null,
    onOpened: () => clearTimeout(waiting),
  });
  const browser = hasDisplay() && !values['address-only'] ? findBrowser() : null;
  if (browser) {
    await openAppWindow(browser, window.address);
    await window.close();
    return;
  }
  if (hasDisplay() && !values['address-only']) console.log(installBrowserHint);
  console.log(`Open once in a browser on this machine: ${window.address}`);
  const minutes = Number(values['wait-minutes'] ?? Number.NaN);
  if (minutes > 0) waiting = setTimeout(() => void window.close(), minutes * 60_000);
}
