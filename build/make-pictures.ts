import { mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { findBrowser, installBrowserHint } from '../electron/local-window/find-browser';
import { serveLocalWindow } from '../electron/local-window/serve-local-window';
import { projectFolder, runNode } from './run-command';

/** `npm run pictures`: the picture in the README, made from the real window so that it never goes stale. */
const browserPath = findBrowser();
if (!browserPath) throw new Error(installBrowserHint);
const built = await runNode(['build/run-typescript.mjs', 'build/build.ts']);
if (built !== 0) process.exit(built);
const jobFolder = join(tmpdir(), 'diewright-pictures');
await runNode([
  'dist/electron/cli.cjs',
  'samples/rain-gauge-contact-spring.dxf',
  ...['--out', jobFolder, '--material', 'brass', '--thickness', '0.2mm'],
]);

const server = await serveLocalWindow({
  pageFolder: join(projectFolder, 'dist/window'),
  outFolder: jobFolder,
  draftFolder: join(jobFolder, 'drafts'),
  openPath: join(jobFolder, 'rain-gauge-contact-spring.diewright.json'),
});
const root = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
const browser = await chromium.launch({
  executablePath: browserPath,
  args: [...root, '--disable-gpu', '--disable-quic'],
});
const folder = join(projectFolder, 'build/pictures');
mkdirSync(folder, { recursive: true });
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
await page.goto(server.address);
await page.getByRole('listitem').first().waitFor();
// The wire's path is drawn once the plan is there; the list is its text.
await page.waitForTimeout(1500);
await page.screenshot({ path: join(folder, 'window.png') });
await browser.close();
await server.close();
