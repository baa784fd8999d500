import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { stateFolder } from '../services/state-folder';
import { findBrowser, installBrowserHint } from './find-browser';
import { hasDisplay, openAppWindow } from './open-app-window';
import { serveLocalWindow } from './serve-local-window';

/**
 * The window on a machine without the desktop shell: `local-window [FILE] [--out FOLDER] [--wait-minutes N]`. Ends when
 * the window is closed. With no display, or no browser that starts, it prints the address and stays until it is ended;
 * with `--wait-minutes` it also ends when nobody has opened the address by then.
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
  let opened = false;
  let waiting: NodeJS.Timeout | undefined;
  const window = await serveLocalWindow({
    pageFolder: join(__dirname, '../window'),
    outFolder: values.out,
    draftFolder: join(stateFolder(), 'drafts'),
    openPath: positionals[0] ?? null,
    onOpened: () => {
      opened = true;
      clearTimeout(waiting);
    },
  });

  if (hasDisplay() && !values['address-only']) {
    const browser = findBrowser();
    if (browser) await openAppWindow(browser, window.address);
    if (opened) return window.close();
    console.log(browser ? `The browser did not open the window: ${browser}` : installBrowserHint);
  }

  const minutes = Number(values['wait-minutes'] ?? Number.NaN);
  const patience = minutes > 0 ? ` (within ${minutes} minutes)` : '';
  console.log(`Open once in a browser on this machine${patience}: ${window.address}`);
  if (minutes > 0) waiting = setTimeout(() => void window.close(), minutes * 60_000);
}
