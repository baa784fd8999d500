import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { dropFile } from '../harness/drop-file';
import { openTestWindow } from '../harness/open-test-window';
import { windowTest } from '../harness/test-browser';
import { dxfOf } from '../../support/dxf-of';
import { roundedRectangle } from '../../support/shapes';
import { parts, typeInto } from '../support/window-parts';
import { audit } from './audit';

const sample = (name: string) => fileURLToPath(new URL(`../../../samples/${name}`, import.meta.url));
const spring = sample('rain-gauge-contact-spring.dxf');

windowTest('menus and panels of the job line keep nobody from working', async () => {
  const { page } = await openTestWindow({ file: spring });
  const { rows, button } = parts(page);
  await rows.first().waitFor();
  const faults: Record<string, string[]> = {};
  const openers = await page
    .locator('.job-line [aria-haspopup="dialog"]')
    .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label') ?? ''));
  expect(openers.length).toBeGreaterThan(5);
  for (const name of openers) {
    await page.getByRole('button', { name, exact: true }).click();
    await page.getByRole('dialog').waitFor();
    faults[name] = await audit(page);
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  }
  for (const name of ['Menu', /^Stock material:/]) {
    await button(name).click();
    await page.getByRole('menu').waitFor();
    // Within a menu the arrow keys go from one to the next.
    faults[String(name)] = await audit(page, { walk: false });
    await page.keyboard.press('Escape');
  }
  expect(Object.entries(faults).filter(([, found]) => found.length > 0)).toEqual([]);
});

windowTest('cards of a corner and of a cut keep nobody from working', async () => {
  const { page } = await openTestWindow({ file: spring });
  await parts(page).rows.first().waitFor();
  for (const key of ['c', '.']) {
    await page.locator('body').press(key);
    await page.getByRole('dialog').waitFor();
    expect(await audit(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  }
});

windowTest('dialogs keep nobody from working', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'diewright-dialogs-'));
  const { page } = await openTestWindow({ file: spring });
  const { rows, button } = parts(page);
  await rows.first().waitFor();
  const dialog = page.getByRole('dialog');
  const faults: Record<string, string[]> = {};
  for (const name of ['Technology table…', 'Stock table…', 'Keys', 'About Diewright and cautions']) {
    await button('Menu').click();
    await page.getByRole('menuitem', { name: new RegExp(`^${name}`) }).click();
    await dialog.waitFor();
    faults[name] = await audit(page);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
  }
  await typeInto(parts(page).field('Wire diameter'), '0.15');
  await dropFile(page, '.window', sample('letterbox-hinge-leaf.dxf'));
  await dialog.waitFor();
  faults['unsaved'] = await audit(page);
  await dialog.getByRole('button', { name: 'Save, then open' }).click();
  await page.getByRole('heading', { name: 'letterbox-hinge-leaf' }).waitFor();
  const path = join(folder, 'no-unit.dxf');
  writeFileSync(path, dxfOf([roundedRectangle(20, 10, 1)]).replace('$INSUNITS', '$NOUNITS'));
  await dropFile(page, '.window', path);
  await page.getByRole('dialog', { name: 'How large is the part?' }).waitFor();
  faults['units'] = await audit(page);
  expect(Object.entries(faults).filter(([, found]) => found.length > 0)).toEqual([]);
});

windowTest('what is wrong with a file and with a typed value keeps nobody from working', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'diewright-problems-'));
  const { page } = await openTestWindow({ file: spring });
  await parts(page).rows.first().waitFor();
  writeFileSync(join(folder, 'letter.diewright.json'), '{ "format": "diewright-job"');
  await dropFile(page, '.window', join(folder, 'letter.diewright.json'));
  await page.getByRole('alert').waitFor();
  expect(await audit(page)).toEqual([]);
  await typeInto(parts(page).field('Wire diameter'), 'thin');
  await page.getByText('"thin" is not a length').waitFor();
  expect(await audit(page, { walk: false })).toEqual([]);
});
