import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { readTechnologyFile } from '../../core/technology-file';
import { readStyleFile } from '../../core/style-file';
import { dropFile } from './harness/drop-file';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { choose, parts, soon, typeInto } from './support/window-parts';

const sample = (name: string) => fileURLToPath(new URL(`../../samples/${name}`, import.meta.url));
const hinge = sample('letterbox-hinge-leaf.dxf');

for (const theme of ['light', 'dark'] as const) {
  windowTest(`the technology table is edited by keyboard, saved and opened again (${theme})`, async () => {
    const { page, picture, outFolder, troubles } = await openTestWindow({ file: hinge, theme });
    const { field, button, status, rows } = parts(page);
    await rows.first().waitFor();
    await page.locator('body').press('t');
    const dialog = page.getByRole('dialog', { name: 'Technology table' });
    await dialog.waitFor();
    // The row for the die: 0.25 mm wire, 25 mm high.
    const rate = field('Rate, rough cut, 0.25 mm wire up to 25 mm');
    expect(await rate.inputValue()).toBe('100 mm²/min');
    await picture(`technology-${theme}`);
    await typeInto(rate, '150');
    expect(await rate.inputValue()).toBe('150 mm²/min');
    await rate.press('ArrowUp');
    expect(await rate.inputValue()).toBe('160 mm²/min');
    await typeInto(rate, '150');
    // Ra 1.6 µm is class 24 of VDI 3400, 0.8 µm class 18.
    const line = dialog
      .getByRole('row')
      .filter({ has: field('Roughness Ra, skim 1, 0.25 mm wire up to 25 mm') });
    await line.getByRole('cell', { name: '24', exact: true }).waitFor();
    await typeInto(field('Roughness Ra, skim 1, 0.25 mm wire up to 25 mm'), '32 µin');
    await line.getByRole('cell', { name: '18', exact: true }).waitFor();

    await typeInto(rate, 'fast');
    await dialog.getByRole('alert').getByText('"fast" is no rate').waitFor();
    await rate.press('Escape');
    await dialog.getByRole('button', { name: 'Copy the row for 0.25 mm wire up to 25 mm' }).click();
    await field('Height of the row for 0.25 mm wire up to 150 mm').waitFor();
    await typeInto(field('Height of the row for 0.25 mm wire up to 150 mm'), '25');
    await dialog.getByRole('alert').getByText('two rows for the same wire and height').waitFor();
    expect(await dialog.getByRole('button', { name: 'Save as a file…' }).isDisabled()).toBe(true);
    await dialog
      .getByRole('button', { name: 'Take out the row for 0.25 mm wire up to 25 mm' })
      .last()
      .click();
    await typeInto(field('Name'), 'Our shop');
    await typeInto(field('Price of an hour'), '90 EUR');
    await dialog.getByRole('button', { name: 'Save as a file…' }).click();
    await soon(() => status.textContent()).toBe('Saved Our shop.diewright-technology.json');
    await dialog.getByRole('button', { name: 'Done' }).click();
    await dialog.waitFor({ state: 'detached' });

    const text = readFileSync(join(outFolder, 'Our shop.diewright-technology.json'), 'utf8');
    const saved = readTechnologyFile(text);
    if (!saved.ok) throw new Error(saved.problem.what);
    const row = saved.value.rows.find(({ wire, height }) => wire === 0.25 && height === 25);
    expect(row?.passes.map((pass) => pass.rate)).toEqual([150, 150, 200]);
    expect(row?.passes[1]?.roughness).toBeCloseTo(0.8128, 9);
    expect(saved.value.machine.hourlyPrice).toEqual({ amount: 90, currency: 'EUR' });

    // The job follows: 150 mm²/min in a block of 25 mm is 6 mm/min.
    await button(/^Passes: /).click();
    await soon(() => field('Feed, rough cut of the die').inputValue()).toBe('6 mm/min');
    await picture(`passes-${theme}`);
    await page.keyboard.press('Escape');
    await soon(() => button(/^Cutting time and cost/).textContent()).toMatch(
      / h \d\d min, \d+ m of wire, [\d.]+ EUR$/,
    );
    await button(/^Cutting time and cost/).click();
    await page.getByRole('rowheader', { name: 'blank-c1-die' }).waitFor();
    await picture(`times-${theme}`);
    await page.keyboard.press('Escape');

    writeFileSync(join(outFolder, 'other.diewright-technology.json'), text.replace('Our shop', 'Other shop'));
    await dropFile(page, '.window', join(outFolder, 'other.diewright-technology.json'));
    await soon(() => status.textContent()).toBe('Technology table Other shop');
    writeFileSync(
      join(outFolder, 'bad.diewright-technology.json'),
      text.replace('"rate": 150', '"rate": "quick"'),
    );
    await dropFile(page, '.window', join(outFolder, 'bad.diewright-technology.json'));
    await page
      .getByRole('alert')
      .getByText(/passes\[1\]\.rate must be a number/)
      .waitFor();
    expect(troubles).toEqual([]);
  });
}

windowTest('in inches and in a small window the table keeps its units and its place', async () => {
  const { page, picture } = await openTestWindow({ file: hinge, width: 1024, height: 640 });
  const { field, rows } = parts(page);
  await rows.first().waitFor();
  await page.locator('body').press('u');
  await page.locator('body').press('t');
  // 1 in = 25.4 mm exactly: 100 mm²/min is 9.3 in²/h, 3.2 µm is 126 µin, 8 m/min is 26.25 ft/min.
  const of = 'rough cut, 0.00984 in wire up to 0.98425 in';
  await soon(() => field(`Rate, ${of}`).inputValue()).toBe('9.3 in²/h');
  expect(await field(`Roughness Ra, ${of}`).inputValue()).toBe('126 µin');
  expect(await field(`Wire speed, ${of}`).inputValue()).toBe('26.25 ft/min');
  const box = await page.getByRole('dialog').boundingBox();
  expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(1024);
  expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(640);
  expect(await page.getByRole('button', { name: 'Done' }).isVisible()).toBe(true);
  await picture('technology-inch-small');
});

windowTest('heights choose the passes; typed passes stay', async () => {
  const { page } = await openTestWindow({ file: hinge });
  const { field, button, rows } = parts(page);
  await rows.first().waitFor();
  await typeInto(field('Height of the die'), '10');
  await button(/^Passes: /).click();
  // 65 mm²/min over 10 mm for the die, 100 over 50 mm for the punch (samples/starting-values…).
  expect(await field('Feed, rough cut of the die').inputValue()).toBe('6.5 mm/min');
  expect(await field('Feed, rough cut of the punch').inputValue()).toBe('2 mm/min');
  await typeInto(field('Spark gap, rough cut of the die'), '0.03');
  // Half the wire, the gap and the stock left, by register, in mm and, of 25.4 mm, in inch.
  const [, rough] = await page
    .getByRole('table', { name: /^Offsets/ })
    .first()
    .getByRole('row')
    .all();
  const left = Number.parseFloat(await field('Stock left, rough cut of the die').inputValue());
  const [, register, mm, inch] = (await rough?.locator('th, td').allTextContents()) ?? [];
  expect(register).toBe('D1');
  expect(Number.parseFloat(mm ?? '')).toBeCloseTo(0.125 + 0.03 + left, 9);
  expect(Number.parseFloat(inch ?? '')).toBeCloseTo((0.125 + 0.03 + left) / 25.4, 5);
  await page.keyboard.press('Escape');
  await button('Where the passes come from: as typed').waitFor();
  await typeInto(field('Height of the die'), '400');
  await parts(page)
    .row(/too high for the machine/)
    .waitFor();
  await choose(page, 'Where the passes come from', /^by the technology table/);
  await parts(page)
    .row(/No row of the technology table fits/)
    .waitFor();
});

windowTest('a program style is chosen, saved, changed by hand and opened', async () => {
  const { page, outFolder, picture } = await openTestWindow({ file: hinge });
  const { status, button, rows } = parts(page);
  await rows.first().waitFor();
  await button(/^Program style/).click();
  await picture('style-menu');
  await page.keyboard.press('Escape');
  await choose(page, 'Program style', /^workshop example/);
  await choose(page, 'Program style', /^Save this style as a file/);
  await soon(() => status.textContent()).toBe('Saved workshop example.diewright-style.json');
  const text = readFileSync(join(outFolder, 'workshop example.diewright-style.json'), 'utf8');
  expect(readStyleFile(text).ok).toBe(true);
  const path = join(outFolder, 'ours.diewright-style.json');
  writeFileSync(path, text.replace('"workshop example"', '"our control"').replace('"radius",', '"centre",'));
  await dropFile(page, '.window', path);
  await soon(() => status.textContent()).toBe('Programs in the style our control');
  await button('Program style: our control').waitFor();
  await button('Export draft').click();
  await soon(() => status.textContent()).toMatch(/^Wrote \d+ files to /);
  const folder = join(outFolder, 'letterbox-hinge-leaf');
  const programs = readdirSync(folder).filter((name) => name.endsWith('.nc'));
  expect(programs.length).toBeGreaterThan(0);
  const program = programs.map((name) => readFileSync(join(folder, name), 'utf8')).join('');
  expect(program).toContain('; Program style our control');
  expect(program).toMatch(/^N\d+ G2 .*I.*J/m);
});
