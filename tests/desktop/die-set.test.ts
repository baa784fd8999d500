import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { readMaterialsFile } from '../../core/materials-file';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { choose, parts, soon, typeInto } from './support/window-parts';

const sample = (name: string) => fileURLToPath(new URL(`../../samples/${name}`, import.meta.url));
const hinge = sample('letterbox-hinge-leaf.dxf');

for (const theme of ['light', 'dark'] as const) {
  windowTest(`the die set: stations, plates, strip, force and the section below (${theme})`, async () => {
    const { page, picture, troubles } = await openTestWindow({ file: hinge, theme, height: 1400 });
    const { rows, field, button } = parts(page);
    await rows.first().waitFor();
    await page.locator('body').press('s');
    const pane = page.getByRole('region', { name: 'Die set' });
    await pane.waitFor();
    await choose(page, 'Arrangement of the tool', /in one station/);
    await choose(page, 'Blanks on the strip', /one up/);
    await choose(page, 'Whether the stripper is made', /own program/);
    await choose(page, 'Whether the retainer is made', /own program/);
    await choose(page, 'Rule for the stripper', /ISO 286/);
    await typeInto(field('Classes of the stripper'), 'H7/Q3');
    await pane.getByRole('alert').getByText('"Q3" is not a tolerance class').waitFor();
    await typeInto(field('Classes of the stripper'), 'H7/f7');
    await soon(() => field('Classes of the stripper').inputValue()).toBe('H7/f7');
    await typeInto(field('Allowance of the retainer per side'), '-0.005');
    await button('Show everything').click();
    await soon(() => pane.getByText('Feed', { exact: true }).count()).toBe(1);
    // Along the strip, through both stations.
    const section = page.getByRole('region', { name: 'Section' });
    await section.getByRole('img', { name: 'Section of the pierce and blank' }).waitFor();
    await typeInto(field('Place of the section in the drawing'), '32 mm');
    await picture(`die-set-${theme}`);
    await pane.getByRole('heading', { name: 'Sections' }).scrollIntoViewIfNeeded();
    await picture(`die-set-force-${theme}`);
    // Compound: the die comes down, the punch with its piercing dies stands below.
    await choose(page, 'Arrangement of the tool', /in one stroke/);
    await section.getByText('die above, punch below').waitFor();
    await picture(`die-set-compound-${theme}`);
    expect(troubles).toEqual([]);
  });
}

windowTest('the stock table shows every source, takes own materials and saves them', async () => {
  const { page, picture, outFolder, troubles } = await openTestWindow({ file: hinge });
  const { rows, field, button, status } = parts(page);
  await rows.first().waitFor();
  await page.locator('body').press('s');
  await button('Stock table…').click();
  const dialog = page.getByRole('dialog', { name: 'Stock table' });
  await dialog.getByText('Groover, Fundamentals of Modern Manufacturing, table 20.1').first().waitFor();
  await dialog.getByRole('button', { name: 'Add a material' }).click();
  await typeInto(field('Name of own material 1'), 'mill certificate 4711');
  await typeInto(field('Source of mill certificate 4711'), 'certificate of the mill');
  await typeInto(field('Clearance of mill certificate 4711'), '7,5 %');
  await typeInto(field('Shear strength of mill certificate 4711'), '310');
  await picture('stock-table');
  await dialog.getByRole('button', { name: 'Save own materials…' }).click();
  await soon(() => status.textContent()).toBe('Saved materials.diewright-materials.json');
  await dialog.getByRole('button', { name: 'Use mill certificate 4711' }).click();
  await dialog.getByRole('button', { name: 'Done' }).click();
  // F = L t τ: the hinge leaf's outline of 211.708 mm in 1 mm at 310 MPa.
  await page.getByRole('region', { name: 'Die set' }).getByText('65.63 kN').first().waitFor();
  const saved = readMaterialsFile(
    readFileSync(join(outFolder, 'materials.diewright-materials.json'), 'utf8'),
  );
  expect(saved.ok && saved.value).toMatchObject([
    {
      name: 'mill certificate 4711',
      clearance: 0.075,
      shearStrength: 310,
      source: 'certificate of the mill',
    },
  ]);
  expect(troubles).toEqual([]);
});

windowTest('a contour as plug and hole shows its fit', async () => {
  const { page, picture, troubles } = await openTestWindow({ file: hinge });
  const { rows, button } = parts(page);
  await rows.first().waitFor();
  await button(/^Contours: /).click();
  await choose(page, 'Use of c2', 'plug and hole');
  await page.keyboard.press('Escape');
  await page.locator('body').press('s');
  const fit = page.getByLabel('Fit of c2', { exact: true });
  await fit.getByText('slip fit').waitFor();
  await fit.getByText('(ISO 286-1)').waitFor();
  await picture('plug-and-hole');
  expect(troubles).toEqual([]);
});

windowTest('punch and die out of one block: angle, proof and the leaning program', async () => {
  const { page, picture, troubles } = await openTestWindow({ file: hinge, height: 1200 });
  const { rows, field, button } = parts(page);
  await rows.first().waitFor();
  await page.locator('body').press('s');
  await choose(page, 'Blocks of punch and die', /tilted wire/);
  const facts = page.getByLabel('One block', { exact: true });
  await facts.getByText('h sin θ + c cos θ = K').waitFor();
  // The clearance of the job, all round, by the true distance of both edges.
  const proved = page.getByRole('table', { name: /Clearance proved/ }).getByRole('row', { name: /^c1/ });
  expect(await proved.getByRole('cell', { name: '0.06 mm', exact: true }).count()).toBe(2);
  await button('Show everything').click();
  await facts.scrollIntoViewIfNeeded();
  await picture('one-block');
  await page.getByRole('tab', { name: 'Cut', exact: true }).click();
  await page
    .getByText(/G00 X\S+ Y\S+ U\S+ V\S+/)
    .first()
    .waitFor();
  await picture('one-block-program');
  expect(await field('Stock thickness').inputValue()).toBe('1 mm');
  expect(troubles).toEqual([]);
});

windowTest('sharp corners in sections, each with its measures', async () => {
  const { page, picture, troubles } = await openTestWindow({ file: hinge, height: 1200 });
  const { rows, button } = parts(page);
  await rows.first().waitFor();
  await page.locator('body').press('s');
  await choose(page, 'Die relief', /land/i);
  await choose(page, 'Members that are split', /^the die/);
  const sections = page.getByRole('list', { name: 'Sections' });
  await sections.getByRole('listitem').first().waitFor();
  await button('Show everything').click();
  await sections.scrollIntoViewIfNeeded();
  await picture('sections');
  expect(troubles).toEqual([]);
});
