import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { readDrawing } from '../../core/drawing/read-drawing';
import { readJobFile } from '../../core/job-file';
import { chooseFileInPage } from './harness/choose-file-in-page';
import { dropFile } from './harness/drop-file';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { choose, parts, pixelOn, pointOn, soon, typeInto, viewOf } from './support/window-parts';

const sample = (name: string) => fileURLToPath(new URL(`../../samples/${name}`, import.meta.url));
const spring = sample('rain-gauge-contact-spring.dxf');
const slot = /Slot or neck of the punch too narrow/;

windowTest('the whole job: open, see, click, change, undo, export, read back', async () => {
  const { page, outFolder, troubles } = await openTestWindow();
  const { picture, row, field, button, status } = parts(page);

  await chooseFileInPage(page, () => button('Open a drawing or job').click(), spring);
  await picture.waitFor();
  await typeInto(field('Stock thickness'), '0.2 mm');
  await choose(page, 'Stock material', /^brass/);

  // The finding is there, and a click shows its place: the 0.2 mm slit about y = 5 (samples/README.md).
  await row(slot).waitFor();
  const before = await viewOf(picture);
  await row(slot).getByRole('button', { name: slot }).click();
  await soon(async () => (await viewOf(picture)).scale).toBeGreaterThan(before.scale * 1.5);
  expect((await viewOf(picture)).y).toBeCloseTo(5, 1);
  expect(await row(slot).getAttribute('data-selected')).toBe('true');

  // Kerf in the slit: 0.10 mm wire + 2 × 0.02 mm gap = 0.14 mm, less than the slit as the punch has it.
  await typeInto(field('Wire diameter'), '0.1');
  await row(slot).waitFor({ state: 'detached' });
  expect(await status.textContent()).toBe('Wire 0.1 mm');

  await page.locator('body').press('Control+z');
  await row(slot).waitFor();
  expect(await field('Wire diameter').inputValue()).toBe('0.25 mm');
  await page.locator('body').press('Control+Shift+Z');
  await row(slot).waitFor({ state: 'detached' });
  expect(await field('Wire diameter').inputValue()).toBe('0.1 mm');

  await button('Export draft').click();
  await soon(() => status.textContent()).toMatch(/^Wrote \d+ files to /);
  const folder = join(outFolder, 'rain-gauge-contact-spring');
  const names = readdirSync(folder);
  const job = readJobFile(readFileSync(join(folder, 'rain-gauge-contact-spring.diewright.json'), 'utf8'));
  expect(job.ok && job.value.wire.diameter).toBe(0.1);
  expect(job.ok && job.value.stock).toEqual({ material: 'brass', thickness: 0.2 });
  const paths = names.find((name) => /-paths.*\.dxf$/.test(name)) ?? '';
  expect(paths).toContain('DRAFT');
  const drawing = readDrawing(readFileSync(join(folder, paths)));
  expect(drawing.ok && drawing.value.statedUnit).toBe('mm');
  const programs = names.filter((name) => name.endsWith('.nc'));
  // Three punches, the die of the outline, and a block with the dies of both rivet holes.
  expect(programs).toHaveLength(5);
  for (const name of programs) expect(readFileSync(join(folder, name), 'utf8')).toMatch(/DRAFT/);
  expect(troubles).toEqual([]);
});

windowTest('a cure is applied with its button, a decision is settled with a reason', async () => {
  const { page, troubles } = await openTestWindow({ file: spring });
  const { rows, row, field, button } = parts(page);
  await typeInto(field('Stock thickness'), '0.2 mm');
  await row(slot).getByRole('button', { name: 'Use 0.15 mm wire' }).click();
  await row(slot).waitFor({ state: 'detached' });
  expect(await field('Wire diameter').inputValue()).toBe('0.15 mm');

  const corner = rows.filter({ hasText: 'Sharp inside corner of the die, 92.05°' }).first();
  await corner.getByRole('button', { name: 'Accept as is…' }).click();
  await page.getByRole('textbox', { name: /Why is it accepted/ }).fill('Fillet agreed with the customer');
  await page.keyboard.press('Enter');
  await corner.getByText('Accepted: Fillet agreed with the customer').waitFor();
  expect(await corner.getAttribute('data-settled')).toBe('true');
  await corner.getByRole('button', { name: 'Reopen' }).click();
  await button('Undo: Reopen').click();
  expect(await corner.getAttribute('data-settled')).toBe('true');
  expect(troubles).toEqual([]);
});

windowTest('the picture and the review list point at each other', async () => {
  const { page } = await openTestWindow({ file: spring });
  const { picture, rows } = parts(page);
  const corner = rows.filter({ hasText: 'Sharp inside corner of the die, 92.05°' }).first();
  await corner.waitFor();
  // The slit's finger ends in a corner at (40, 3.4): samples/rain-gauge-contact-spring.dxf.
  const at = await pointOn(picture, { x: 40, y: 3.4 });
  await page.mouse.move(at.x, at.y);
  await soon(() => corner.getAttribute('data-hovered')).toBe('true');
  await page.mouse.click(at.x, at.y);
  await soon(() => corner.getAttribute('data-selected')).toBe('true');
  await page.mouse.move(at.x, at.y - 200);
  await soon(() => corner.getAttribute('data-hovered')).toBe('false');

  await page.keyboard.press('Escape');
  await soon(() => corner.getAttribute('data-selected')).toBe('false');
  const emptyCanvas = await canvasSum(page);
  await corner.hover();
  await soon(() => canvasSum(page)).not.toBe(emptyCanvas);
});

windowTest('wheel, drag and keys move the picture', async () => {
  const { page } = await openTestWindow({ file: spring });
  const { picture, rows } = parts(page);
  await rows.first().waitFor();
  const fitted = await viewOf(picture);
  // Wheel events count whole pixels.
  const { pixel: at, shows: place } = await pixelOn(picture, { x: 30, y: 5 });
  await page.mouse.move(at.x, at.y);
  await page.mouse.wheel(0, -400);
  await soon(async () => (await viewOf(picture)).scale).toBeGreaterThan(fitted.scale * 1.5);
  const held = await pointOn(picture, place);
  expect(held.x).toBeCloseTo(at.x, 3);
  expect(held.y).toBeCloseTo(at.y, 3);

  const zoomed = await viewOf(picture);
  await page.mouse.down();
  await page.mouse.move(at.x + 60, at.y + 30, { steps: 4 });
  await page.mouse.up();
  const panned = await viewOf(picture);
  expect((zoomed.x - panned.x) * zoomed.scale).toBeCloseTo(60, 3);
  expect((panned.y - zoomed.y) * zoomed.scale).toBeCloseTo(30, 3);

  await page.keyboard.press('f');
  await soon(() => viewOf(picture)).toEqual(fitted);
  await page.keyboard.press('+');
  await soon(async () => (await viewOf(picture)).scale).toBeCloseTo(fitted.scale * 1.5, 6);
  await picture.focus();
  await page.keyboard.press('ArrowRight');
  await soon(async () => (await viewOf(picture)).x).toBeGreaterThan(fitted.x);
});

windowTest('a dropped drawing opens; inches show everywhere and typed values take either unit', async () => {
  const { page } = await openTestWindow();
  const { field, rows } = parts(page);
  await dropFile(page, '.window', sample('heat-sink-spacer-inch.dxf'));
  await rows.first().waitFor();
  await page.getByRole('radio', { name: 'inch' }).click();
  // 1 mm = 0.03937 in; 0.25 mm = 0.00984 in (1 in = 25.4 mm exactly).
  expect(await field('Stock thickness').inputValue()).toBe('0.03937 in');
  expect(await field('Wire diameter').inputValue()).toBe('0.00984 in');
  await typeInto(field('Stock thickness'), '0.040');
  expect(await field('Stock thickness').inputValue()).toBe('0.04 in');
  await typeInto(field('Wire diameter'), '0,2 mm');
  await typeInto(field('Clearance per side'), '5 % t');
  expect(await field('Clearance per side').inputValue()).toBe('0.002 in');
  await page.getByRole('radio', { name: 'mm' }).click();
  expect(await field('Wire diameter').inputValue()).toBe('0.2 mm');
  expect(await field('Stock thickness').inputValue()).toBe('1.016 mm');

  await typeInto(field('Wire diameter'), 'thin');
  await page.getByRole('alert').getByText('"thin" is not a length').waitFor();
  await field('Wire diameter').press('Escape');
  expect(await field('Wire diameter').inputValue()).toBe('0.2 mm');
});

windowTest('a drawing without a unit asks how large the part is', async () => {
  const { page, outFolder } = await openTestWindow();
  const { rows, button } = parts(page);
  const path = join(outFolder, 'no-unit.dxf');
  writeFileSync(path, unitlessSquare);
  await dropFile(page, '.window', path);
  const question = page.getByRole('dialog', { name: 'How large is the part?' });
  await question.waitFor();
  await question.getByText('20 × 20 mm').waitFor();
  await question.getByRole('button', { name: 'Inches 508 × 508 mm 20 × 20 in' }).click();
  await rows.first().waitFor();
  await question.waitFor({ state: 'detached' });
  await button(/^Contours/).click();
  await page.getByRole('cell', { name: '508 × 508' }).waitFor();
});

windowTest('what can not be opened says so and leaves the open job alone', async () => {
  const { page, outFolder } = await openTestWindow({ file: spring });
  const { rows, button } = parts(page);
  await rows.first().waitFor();
  const path = join(outFolder, 'broken.diewright.json');
  writeFileSync(path, '{ "format": "diewright-job", "version": 1');
  await dropFile(page, '.window', path);
  const alert = page.getByRole('alert');
  await alert.waitFor();
  expect(await rows.count()).toBeGreaterThan(5);
  await alert.getByRole('button', { name: 'Close' }).click();

  await typeInto(parts(page).field('Wire diameter'), '0.2');
  await dropFile(page, '.window', sample('letterbox-hinge-leaf.dxf'));
  const question = page.getByRole('dialog', { name: /Save the changes to rain-gauge-contact-spring/ });
  await question.getByRole('button', { name: 'Save, then open' }).click();
  await page.getByRole('heading', { name: 'letterbox-hinge-leaf' }).waitFor();
  const saved = readJobFile(
    readFileSync(join(outFolder, 'rain-gauge-contact-spring.diewright.json'), 'utf8'),
  );
  expect(saved.ok && saved.value.wire.diameter).toBe(0.2);
  expect(await button('Undo').getAttribute('aria-disabled')).toBe('true');
});

windowTest('a file that is no drawing says what is wrong, where and what to do', async () => {
  const { page, outFolder } = await openTestWindow();
  for (const [name, text] of [
    ['letter.dxf', 'Dear toolmaker,\n'],
    ['empty.dxf', ''],
    ['cut-off.dxf', readFileSync(spring, 'latin1').slice(0, 700)],
  ] as const) {
    writeFileSync(join(outFolder, name), text);
    await dropFile(page, '.window', join(outFolder, name));
    await page.getByRole('heading', { name: name.replace('.dxf', '') }).waitFor();
    const alert = page.getByRole('alert');
    await alert.waitFor();
    expect((await alert.textContent())?.length).toBeGreaterThan(40);
    expect(
      await parts(page)
        .button(/^Export/)
        .getAttribute('aria-disabled'),
    ).toBe('true');
  }
});

for (const theme of ['light', 'dark'] as const) {
  windowTest(`the window fits 1024 × 640 and 1440 × 900 (${theme})`, async () => {
    const { page, picture: shoot, troubles } = await openTestWindow({ file: spring, theme });
    const { picture, rows } = parts(page);
    await rows.first().waitFor();
    for (const [width, height] of [
      [1024, 640],
      [1440, 900],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.keyboard.press('f');
      const seen = await page.evaluate(() => ({
        across: document.documentElement.scrollWidth,
        down: document.documentElement.scrollHeight,
      }));
      expect(seen).toEqual({ across: width, down: height });
      // More than half of the window's width and height is picture.
      const box = await picture.boundingBox();
      expect(box?.width).toBeGreaterThan(width / 2);
      expect(box?.height).toBeGreaterThan(height / 2);
      await shoot(`window-${theme}-${width}x${height}`);
    }
    expect(await page.evaluate(() => document.documentElement.dataset['theme'])).toBe(theme);
    expect(troubles).toEqual([]);
  });
}

/** A square of 20 drawing units; its header states no $INSUNITS. */
const unitlessSquare = [
  ...['0', 'SECTION', '2', 'ENTITIES', '0', 'LWPOLYLINE', '8', '0', '90', '4', '70', '1'],
  ...['10', '0', '20', '0', '10', '20', '20', '0', '10', '20', '20', '20', '10', '0', '20', '20'],
  ...['0', 'ENDSEC', '0', 'EOF', ''],
].join('\n');

/** A number that changes with what the canvases show. */
function canvasSum(page: Page): Promise<number> {
  return page.evaluate(() => {
    let sum = 0;
    for (const canvas of document.querySelectorAll('canvas')) {
      const pixels = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
      for (let i = 0; i < pixels.length; i += 4)
        sum = (sum * 31 + (pixels[i] ?? 0) + (pixels[i + 3] ?? 0)) % 1e9;
    }
    return sum;
  });
}
