import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { findBrowser, installBrowserHint } from '../../electron/local-window/find-browser';
import { serveLocalWindow } from '../../electron/local-window/serve-local-window';
import { projectFolder, runNode } from '../run-command';
import { stars } from './big-drawing';
import { markdownTable } from './markdown-table';
import { dropAndWait, moveForFrames, watchForEdit } from './window-page';

/**
 * `npm run bench:window`: what a person waits for, in the real window in a headless browser that renders without a
 * graphics card. Beside the clock stands the processor time of the browser's processes that draw (Chrome DevTools
 * Protocol, SystemInfo.getProcessInfo): on a machine with other things to do the clock says more about those.
 * `-- drop`, `-- edit` or `-- move` measures only that.
 */
interface Row {
  readonly what: string;
  readonly goal: number;
  readonly clock: number;
  readonly processor: number;
}

const measures = { edit: edits, drop: drops, move: moves } as const;
const named = process.argv.slice(2).filter((word): word is keyof typeof measures => word in measures);
const wanted = named.length > 0 ? named.map((name) => measures[name]) : Object.values(measures);

const frameGoal = 33;
const dropGoal = 300;
const editGoal = 100;
const frames = 90;

async function measureAll(): Promise<Row[]> {
  const path = findBrowser();
  if (!path) throw new Error(installBrowserHint);
  if ((await runNode(['build/run-typescript.mjs', 'build/build.ts'])) !== 0) process.exit(1);
  const folder = mkdtempSync(join(tmpdir(), 'diewright-bench-window-'));
  const server = await serveLocalWindow({
    pageFolder: join(projectFolder, 'dist/window'),
    outFolder: folder,
    draftFolder: join(folder, 'drafts'),
    openPath: null,
  });
  const root = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const browser = await chromium.launch({
    executablePath: path,
    args: [...root, '--disable-gpu', '--disable-quic'],
  });
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    page.on('dialog', (dialog) => void dialog.accept());
    await page.goto(server.address);
    await page.getByRole('heading', { level: 2 }).first().waitFor();
    const rows: Row[] = [];
    for (const measure of wanted) rows.push(...(await measure(browser, page)));
    return rows;
  } finally {
    await browser.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** 50,000 segments of 1,250 contours, all of them on the canvas; the same again as lines under them is switched off. */
async function moves(browser: Browser, page: Page): Promise<Row[]> {
  await startAnew(page);
  await page.evaluate(dropAndWait, { name: 'large.dxf', text: stars(50_000).text });
  await page.getByRole('tab', { name: 'Drawing' }).click();
  await page.getByRole('heading', { name: 'Closed contours' }).waitFor({ timeout: 120_000 });
  const stop = page.getByRole('button', { name: 'Stop', exact: true });
  await stop.click({ timeout: 5000 }).catch(() => undefined);
  await page.getByRole('button', { name: 'Other lines' }).click();
  const rows: Row[] = [];
  for (const way of ['pan', 'zoom'] as const) {
    await page.keyboard.press('f');
    const used = await drawingTime(browser);
    const { gaps } = await page.evaluate(moveForFrames, { way, count: frames });
    const processor = (await drawingTime(browser)) - used;
    rows.push({
      what: `${way}, 50,000 segments, median frame`,
      goal: frameGoal,
      clock: gaps[Math.floor(gaps.length / 2)] ?? NaN,
      processor: processor / frames,
    });
  }
  return rows;
}

const thousand = 'drawing of 1,000 entities';

async function drops(browser: Browser, page: Page): Promise<Row[]> {
  const rows: Row[] = [];
  // The first one warms up: its code is compiled then.
  for (let round = 0; round < 4; round++) {
    await startAnew(page);
    const used = await drawingTime(browser);
    const clock = await page.evaluate(dropAndWait, { name: 'thousand.dxf', text: stars(1000).text });
    const processor = (await drawingTime(browser)) - used;
    rows.push({ what: `${thousand} dropped, first picture`, goal: dropGoal, clock, processor });
  }
  return [least(rows.slice(1))];
}

async function edits(browser: Browser, page: Page): Promise<Row[]> {
  const sample = 'rain-gauge-contact-spring.dxf';
  const text = readFileSync(join(projectFolder, 'samples', sample), 'latin1');
  const rows: Row[] = [];
  for (const drawing of [
    { what: `sample ${sample}`, name: sample, text },
    { what: thousand, name: 'thousand.dxf', text: stars(1000).text },
  ]) {
    await startAnew(page);
    await page.evaluate(dropAndWait, drawing);
    rows.push(await edit(browser, page, drawing.what));
  }
  return rows;
}

/** The start page, at rest; edits that are not saved are let go. */
async function startAnew(page: Page): Promise<void> {
  await page.reload();
  await page.getByRole('heading', { level: 2 }).first().waitFor();
  await page.waitForTimeout(1500);
}

/** Clearance typed anew, the first time for warming up; the quicker of the others counts. */
async function edit(browser: Browser, page: Page, what: string): Promise<Row> {
  const field = page.getByRole('textbox', { name: 'Clearance per side', exact: true });
  await page.getByRole('list', { name: 'Review list' }).locator('> li').first().waitFor({ timeout: 120_000 });
  await page.locator('.status-progress').waitFor({ state: 'detached', timeout: 120_000 });
  const rows: Row[] = [];
  for (const clearance of ['0.05', '0.07', '0.06']) {
    await field.fill(clearance);
    await page.evaluate(watchForEdit);
    const used = await drawingTime(browser);
    await field.press('Enter');
    const clock = await page.evaluate(
      () => (window as Window & { pictureAfterEnter?: Promise<number> }).pictureAfterEnter ?? NaN,
    );
    const processor = (await drawingTime(browser)) - used;
    rows.push({ what: `clearance of the ${what} changed, new picture`, goal: editGoal, clock, processor });
    await page.locator('.status-progress').waitFor({ state: 'detached', timeout: 120_000 });
  }
  return least(rows.slice(1));
}

const least = (rows: readonly Row[]): Row =>
  rows.reduce((best, row) => (row.clock < best.clock ? row : best));

/** Milliseconds of the processor that the page's and the drawing processes have used so far. */
async function drawingTime(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const drawing = processInfo.filter(({ type }) => type === 'renderer' || type === 'GPU');
  return 1000 * drawing.reduce((sum, { cpuTime }) => sum + cpuTime, 0);
}

const rows = await measureAll();
const milliseconds = (value: number): string => `${Math.round(value)} ms`;
console.log(
  markdownTable(
    ['', 'goal', 'by the clock', 'processor time', ''],
    rows.map(({ what, goal, clock, processor }) => [
      ...[what, milliseconds(goal), milliseconds(clock), milliseconds(processor)],
      clock < goal ? 'met' : 'NOT met',
    ]),
  ),
);
