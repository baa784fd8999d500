import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from 'playwright-core';
import { onTestFinished } from 'vitest';
import { serveLocalWindow } from '../../../electron/local-window/serve-local-window';
import { testBrowser } from './test-browser';

const projectFolder = fileURLToPath(new URL('../../..', import.meta.url));

export interface TestWindow {
  readonly page: Page;
  /** What the window saves and exports lands here; goes when the test ends. */
  readonly outFolder: string;
  /** What went wrong in the page so far: uncaught errors, and errors in its log. */
  readonly troubles: readonly string[];
  /** Writes dist/screenshots/NAME.png and returns its path. */
  picture(name: string): Promise<string>;
}

export interface TestWindowOptions {
  /** A drawing or job to start with. */
  readonly file?: string;
  /** Where unsaved work is kept; goes when the test ends. */
  readonly draftFolder?: string;
  readonly width?: number;
  readonly height?: number;
  readonly theme?: 'light' | 'dark';
}

/** Serves the built page as the local window does and opens it in the machine's browser; closes with the test. */
export async function openTestWindow(options: TestWindowOptions = {}): Promise<TestWindow> {
  const pageFolder = join(projectFolder, 'dist/window');
  if (!existsSync(join(pageFolder, 'index.html'))) {
    throw new Error('The window is not built: run npm run build, or npm test, which builds it first.');
  }
  const outFolder = mkdtempSync(join(tmpdir(), 'diewright-window-test-'));
  onTestFinished(() => rmSync(outFolder, { recursive: true, force: true }));
  const draftFolder = options.draftFolder ?? `${outFolder}-drafts`;
  onTestFinished(() => rmSync(draftFolder, { recursive: true, force: true }));
  const openPath = options.file ?? null;
  const server = await serveLocalWindow({ pageFolder, outFolder, draftFolder, openPath });
  onTestFinished(() => server.close());

  const browser = await chromium.launch({ executablePath: testBrowser(), args: browserFlags });
  onTestFinished(() => browser.close());
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1440, height: options.height ?? 900 },
    colorScheme: options.theme ?? 'light',
    acceptDownloads: true,
  });
  const page = await context.newPage();
  const troubles: string[] = [];
  page.on('pageerror', (error) => troubles.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(message.text());
  });
  // Nothing is asked of anybody but the window's own server, ever.
  context.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(`${server.origin}/`) && !/^(data|blob):/.test(url)) troubles.push(`asked ${url}`);
  });
  await page.goto(server.address);

  return { page, outFolder, troubles, picture: (name) => picture(page, name) };
}

const browserFlags = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

async function picture(page: Page, name: string): Promise<string> {
  const folder = join(projectFolder, 'dist/screenshots');
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `${name}.png`);
  await page.screenshot({ path });
  return path;
}
