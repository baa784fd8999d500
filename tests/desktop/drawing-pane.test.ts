import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { stars } from '../../build/bench/big-drawing';
import { readJobFile } from '../../core/job-file';
import { dropFile } from './harness/drop-file';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { parts, pointOn, soon, typeInto } from './support/window-parts';

const sent = (name: string) => fileURLToPath(new URL(`../../samples/as-sent/${name}`, import.meta.url));
const lamp = sent('picnic-lamp-bracket.dxf');

/** The parts of the drawing pane. */
const pane = (page: Page) => ({
  tab: page.getByRole('tab', { name: 'Drawing' }),
  part: (title: string) => page.getByRole('region', { name: title, exact: true }),
  contour: (id: string) => page.locator(`tr[data-contour="${id}"]`),
  tick: (name: string) => page.getByRole('checkbox', { name }),
});

for (const theme of ['light', 'dark'] as const) {
  windowTest(`a drawing as customers send it is put in order by hand (${theme})`, async () => {
    const { page, picture: shoot, troubles, outFolder } = await openTestWindow({ file: lamp, theme });
    const { button, rows, status } = parts(page);
    const { tab, part, contour, tick } = pane(page);

    // The unit is asked for by the size of the part: 130 × 45 mm, not that of the sheet (build/sample-lamp-bracket.ts).
    const question = page.getByRole('dialog', { name: 'How large is the part?' });
    await question.waitFor();
    await shoot(`drawing-unit-${theme}`);
    await question.getByRole('button', { name: 'Millimetres 130 × 45 mm 5.118 × 1.772 in' }).click();
    await rows.first().waitFor();
    await tab.click();

    // The frame, the title block and the construction circle are closed and left out.
    await part('Closed contours').getByText('3 taken, 5 left out').waitFor();
    await contour('c4').getByText('frame of the sheet').waitFor();
    await shoot(`drawing-as-sent-${theme}`);

    // The histogram: a bar each for the gaps of 0.003 and 0.03 mm; pointing marks the ends, choosing closes them.
    const bar = button('2 ends 0.02 mm to 0.05 mm apart: join up to there');
    await bar.hover();
    await shoot(`drawing-gaps-${theme}`);
    await bar.click();
    expect(await status.textContent()).toBe('Close gaps up to 0.05 mm');
    await contour('c1').getByText('60 × 30.02 mm').waitFor();
    expect(await page.getByRole('textbox', { name: 'Gap tolerance' }).inputValue()).toBe('0.05 mm');

    // The frozen layer's holes.
    await tick('Layer SCREW HOLES').check();
    await part('Closed contours').getByText('5 taken, 5 left out').waitFor();
    await part('Layers').getByText('chosen by hand').waitFor();

    // Repairs by kind and place: a click goes there.
    const gaps = part('Repairs').getByRole('listitem').filter({ hasText: 'both ends moved' });
    await gaps.getByText('Places, the largest 0.03 mm').click();
    await gaps.getByRole('button', { name: '0.03 mm at x 58 mm, y 90.015 mm' }).click();
    await soon(async () => (await parts(page).picture.getAttribute('data-centre')) ?? '').toMatch(
      /^58 90\.015/,
    );
    await shoot(`drawing-repair-${theme}`);
    await tick('Put right: Gaps').uncheck();
    // With the gaps as drawn only the bend line closes something.
    await contour('c1').getByText('25 × 30 mm').waitFor();
    await tick('Put right: Gaps').check();
    await contour('c1').getByText('60 × 30.02 mm').waitFor();

    // The washer's Ø 30 +0.2/0 is offered as a size shift of 0.05 mm per side.
    await button('Shift c4 by 0.05 mm per side').click();
    expect(await page.getByRole('textbox', { name: 'Size shift of c4 per side' }).inputValue()).toBe(
      '0.05 mm',
    );
    await part('Stated tolerances').getByText('c4 is made to its middle').waitFor();
    await typeInto(page.getByRole('textbox', { name: 'Size shift of c4 per side' }), '-0.01');
    expect(await status.textContent()).toBe('Contour c4: size shift -0.01 mm per side');

    await button('Save').click();
    await soon(() => status.textContent()).toMatch(/^Saved/);
    const saved = readJobFile(readFileSync(join(outFolder, 'picnic-lamp-bracket.diewright.json'), 'utf8'));
    expect(saved.ok && saved.value.drawing.gapTolerance).toBe(0.05);
    expect(saved.ok && saved.value.drawing.choice.layers).toEqual([
      '0',
      'CONSTRUCTION',
      'PART',
      'SCREW HOLES',
    ]);
    expect(saved.ok && saved.value.sizeShifts).toEqual({ c4: -0.01 });
    expect(troubles).toEqual([]);
  });
}

windowTest('contours are taken and left out by clicking them, and by keys alone', async () => {
  const { page } = await openTestWindow({ file: lamp });
  const { picture, rows } = parts(page);
  const { tab, part, contour, tick } = pane(page);
  await page.getByRole('button', { name: /^Millimetres/ }).click();
  await rows.first().waitFor();
  await tab.click();
  await page.keyboard.press('f');
  // The construction circle about (50, 75) with a radius of 40, from below.
  const at = await pointOn(picture, { x: 50, y: 35 });
  await page.mouse.move(at.x, at.y);
  await soon(() => contour('c5').getAttribute('data-hovered')).toBe('true');
  await page.mouse.click(at.x, at.y);
  await soon(() => contour('c5').getAttribute('data-selected')).toBe('true');
  await page.keyboard.press('x');
  await part('Closed contours').getByText('4 taken, 4 left out').waitFor();
  expect(await tick('Contour c5 is an edge of the part').isChecked()).toBe(true);
  await page.mouse.dblclick(at.x, at.y);
  await part('Closed contours').getByText('3 taken, 5 left out').waitFor();

  await tick('Contour c2 is an edge of the part').focus();
  await page.keyboard.press('Space');
  await part('Closed contours').getByText('2 taken, 6 left out').waitFor();
  await contour('c2').getByText('left out by hand').waitFor();
  await page.keyboard.press('Control+z');
  await part('Closed contours').getByText('3 taken, 5 left out').waitFor();
  // D goes to the review list and back.
  await page.keyboard.press('d');
  await rows.first().waitFor();
  await page.keyboard.press('d');
  await part('Closed contours').waitFor();
});

windowTest('colours and units are chosen by what they come to', async () => {
  const { page } = await openTestWindow({ file: lamp });
  const { rows } = parts(page);
  const { tab, part, tick } = pane(page);
  await page.getByRole('button', { name: /^Millimetres/ }).click();
  await rows.first().waitFor();
  await tab.click();
  // What was drawn in dark grey are the construction lines.
  await tick('Colour 8 dark grey').uncheck();
  await part('Closed contours').getByText('3 taken, 4 left out').waitFor();
  await page.getByRole('radio', { name: 'Inches 3302 × 1143 mm 130 × 45 in' }).click();
  await soon(async () => part('Closed contours').textContent()).toMatch(/635 × 762 mm/);
});

windowTest('what the drawing says of its own unit and tolerances is cured from the review list', async () => {
  const { page, outFolder } = await openTestWindow({ file: lamp });
  const { row } = parts(page);
  await page.getByRole('button', { name: /^Millimetres/ }).click();
  const limit = row(/Made to the limit of a tolerance/);
  await limit.getByRole('button', { name: 'Shift by 0.05 mm per side' }).click();
  await limit.waitFor({ state: 'detached' });
  await row(/Dimension not to scale/)
    .getByText(/says "60\.5"/)
    .waitFor();

  const large = join(outFolder, 'large.dxf');
  writeFileSync(large, lineSquare(80, 0, 1));
  await dropFile(page, '.window', large);
  await page.getByRole('button', { name: 'Open without saving' }).click();
  await row(/Is this the unit\?/)
    .getByRole('button', { name: 'Read it in mm' })
    .click();
  await row(/Is this the unit\?/).waitFor({ state: 'detached' });
  expect(await page.getByRole('button', { name: 'Drawing unit: mm' }).count()).toBe(1);
});

windowTest('SVG paths and point lists open like any drawing', async () => {
  const { page, troubles } = await openTestWindow();
  const { rows, button } = parts(page);
  for (const [name, size] of [
    ['spice-tin-spring.svg', '36 × 20'],
    ['music-box-cam.csv', '25.4 × 25.4'],
  ] as const) {
    await dropFile(page, '.window', sent(name));
    await page.getByRole('heading', { name: name.replace(/\..*/, '') }).waitFor();
    await rows.first().waitFor();
    await button(/^Contours/).click();
    await page.getByRole('cell', { name: size }).waitFor();
    await page.keyboard.press('Escape');
  }
  expect(troubles).toEqual([]);
});

windowTest('a drawing in which nothing closes is shown with its gaps', async () => {
  const { page, outFolder, picture: shoot } = await openTestWindow();
  const { part, contour } = pane(page);
  const path = join(outFolder, 'open.dxf');
  writeFileSync(path, lineSquare(20, 0.3, 4));
  await dropFile(page, '.window', path);
  await page.getByRole('alert').getByText('The drawing has no closed contour.').waitFor();
  // The pane is there at once, and the cure with it.
  await part('Gaps between ends').getByText('ends meet exactly').waitFor();
  await shoot('drawing-open-outline');
  await page.getByRole('button', { name: /^2 ends 0\.2 mm to 0\.5 mm apart/ }).click();
  await contour('c1').getByText('20 × 20').waitFor();
  await page.getByRole('alert').waitFor({ state: 'detached' });
});

windowTest(
  'a drawing of 200,000 lines shows how far it is, can be looked at early, and stops when told to',
  async () => {
    const { page, outFolder, picture: shoot, troubles } = await openTestWindow();
    const { button, picture } = parts(page);
    const { part } = pane(page);
    const path = join(outFolder, 'stars.dxf');
    writeFileSync(path, stars(200_000).text);
    // Kept from before the drop: on a fast machine the reading may be over before anyone could ask for it.
    const steps = await stepsShown(page);
    await dropFile(page, '.window', path);
    // The window answers while the drawing is being read.
    await page.getByRole('radio', { name: 'inch' }).click();
    expect(await page.getByRole('radio', { name: 'inch' }).getAttribute('aria-checked')).toBe('true');
    await page.keyboard.press('d');
    // 5000 stars of 40 lines (build/bench/big-drawing.ts); their tools are still being worked out.
    await part('Closed contours').getByText('5000 taken, 0 left out').waitFor({ timeout: 100_000 });
    expect(await steps()).toEqual(expect.arrayContaining(['Reading the drawing', 'Joining the outline']));
    await shoot('drawing-200000');
    await button('Stop').click();
    await page.getByRole('alert').getByText('The calculation was stopped.').waitFor();
    expect(await page.getByRole('progressbar').count()).toBe(0);
    expect(Number(await picture.getAttribute('data-scale'))).toBeGreaterThan(0);
    // What was read is still there to choose from.
    expect(await part('Layers').getByRole('checkbox').count()).toBe(1);
    await button('Go on').click();
    await page.getByRole('progressbar').first().waitFor({ timeout: 60_000 });
    await button('Stop').click();
    await page.getByRole('alert').getByText('The calculation was stopped.').waitFor();
    expect(troubles).toEqual([]);
  },
);

/** The names that progress has had in the window from now on, whenever it is asked. */
async function stepsShown(page: Page): Promise<() => Promise<string[]>> {
  const seen = await page.evaluateHandle(() => {
    const names = new Set<string>();
    const look = () => {
      for (const bar of document.querySelectorAll('[role="progressbar"], progress')) {
        names.add(bar.getAttribute('aria-label') ?? '');
      }
    };
    new MutationObserver(look).observe(document.body, { subtree: true, childList: true, attributes: true });
    return names;
  });
  return () => seen.evaluate((names) => [...names]);
}

/** A square of four lines, one end so far from its corner; `unit` as `$INSUNITS` has it, 1 inch, 4 mm. */
function lineSquare(side: number, gap: number, unit: 1 | 4): string {
  const section = (name: string, pairs: readonly string[]) => [
    '0',
    'SECTION',
    '2',
    name,
    ...pairs,
    '0',
    'ENDSEC',
  ];
  return [
    ...section('HEADER', ['9', '$INSUNITS', '70', String(unit)]),
    ...section('ENTITIES', [
      ...[...line(0, 0, side, 0), ...line(side, 0, side, side)],
      ...[...line(side, side, 0, side), ...line(0, side, 0, gap)],
    ]),
    ...['0', 'EOF', ''],
  ].join('\n');
}

function line(x0: number, y0: number, x1: number, y1: number): string[] {
  return ['0', 'LINE', '8', '0', '10', x0, '20', y0, '11', x1, '21', y1].map(String);
}
