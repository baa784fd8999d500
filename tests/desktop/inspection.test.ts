import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { openJobFile } from '../../core/open-job-file';
import { dxfOf } from '../support/dxf-of';
import { polygon, square } from '../support/shapes';
import { chooseFileInPage } from './harness/choose-file-in-page';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { choose, parts, pointOn, soon, typeInto } from './support/window-parts';

const sample = (name: string) => fileURLToPath(new URL(`../../samples/${name}`, import.meta.url));
const spring = sample('rain-gauge-contact-spring.dxf');

async function openInspection(page: Page, section: string): Promise<void> {
  await page.getByRole('tab', { name: 'Inspect' }).click();
  await page.getByRole('radio', { name: section, exact: true }).click();
}

windowTest(
  'clearance: numbers, probe and chart point at each other; the punch is shifted and made even',
  async () => {
    const { page, outFolder, picture: shoot, troubles } = await openTestWindow();
    const { picture, rows, field, button, status } = parts(page);
    const path = join(outFolder, 'square.dxf');
    writeFileSync(path, dxfOf([square(20)]));
    await chooseFileInPage(page, () => button('Open a drawing or job').click(), path);
    await rows.first().waitFor();
    await openInspection(page, 'Clearance');
    const facts = page.getByRole('region', { name: 'Clearance as cut' });
    const chart = page.getByRole('slider', { name: 'Place along the punch' });
    // 20 mm square, soft steel 1 mm: 0.06 per side (Groover, table 20.1).
    await facts.getByText('0.06 mm ±').waitFor();
    await shoot('inspect-clearance');

    await typeInto(field('Shift in x'), '0.01 mm');
    await facts.getByRole('button', { name: /^0.07 mm at/ }).waitFor();
    // Half way up the right edge, which now has 0.01 less.
    const at = await pointOn(picture, { x: 19.95, y: 10 });
    await page.mouse.move(at.x, at.y);
    await soon(() => chart.getAttribute('aria-valuetext')).toMatch(/: 0\.05 mm$/);
    await page.getByText(/^0\.05 mm at .* along the punch, normal 0°$/).waitFor();
    await page.mouse.click(at.x, at.y);
    await shoot('inspect-shifted');
    const box = await chart.boundingBox();
    await page.mouse.move((box?.x ?? 0) + (box?.width ?? 0) / 2, (box?.y ?? 0) + 50);
    await soon(() => chart.getAttribute('aria-valuetext')).not.toMatch(/: 0\.05 mm$/);
    // A click on the chart shows its place: the middle of the way round, where two edges meet at the upper left.
    await page.mouse.click((box?.x ?? 0) + (box?.width ?? 0) / 2, (box?.y ?? 0) + 50);
    await soon(async () => Number((await picture.getAttribute('data-scale')) ?? 0)).toBeGreaterThan(100);
    await chart.press('ArrowRight');
    await soon(() => chart.getAttribute('aria-valuetext')).toMatch(/along: /);
    await button('Show everything').click();

    await typeInto(field('Turn'), '0.05');
    // The left edge's lower end, 9.855 below the middle, goes away by 9.855 · sin 0.05° = 0.0086 mm.
    await facts.getByRole('button', { name: /^0\.078[56] mm at/ }).waitFor();
    await typeInto(field('Turn'), '0');

    await button('Most even position').click();
    await soon(() => status.first().textContent()).toMatch(/^Most even position: least clearance 0\./);
    await soon(() => field('Shift in x').inputValue()).toBe('0 mm');

    await page.getByRole('radio', { name: 'Light test' }).click();
    await choose(page, 'Exaggeration of the gap', '20 times');
    await shoot('inspect-light');
    // Shifted by more than the clearance the punch lies on the right edge.
    await typeInto(field('Shift in x'), '0.07 mm');
    await page.getByRole('button', { name: /^-0\.0\d+ mm at/ }).waitFor();
    await page.getByText('touching or overlapping').first().waitFor();
    await shoot('inspect-light-contact');
    expect(troubles).toEqual([]);
  },
);

windowTest('measured points: read, fitted, judged, paired; undo takes a choice back', async () => {
  const { page, picture: shoot, troubles } = await openTestWindow({ file: spring });
  const { rows, field, button } = parts(page);
  await rows.first().waitFor();
  await typeInto(field('Stock thickness'), '0.2 mm');
  await choose(page, 'Stock material', /^brass/);
  await typeInto(field('Wire diameter'), '0.1');
  // What is drawn has its entry in the key: the members, until there are points to lay over one.
  const key = page.getByRole('group', { name: 'Parts of the picture' });
  await openInspection(page, 'Revision');
  await soon(() => key.getByRole('button').allTextContents()).toEqual(['Die', 'Punch']);
  await openInspection(page, 'Points');
  await soon(() => key.getByRole('button').allTextContents()).toEqual(['Die', 'Punch', 'Readings']);
  await chooseFileInPage(
    page,
    () => button('Read a list…').click(),
    sample('rain-gauge-contact-spring-measured.csv'),
  );
  const verdict = page.getByRole('region', { name: 'Verdict' });
  await verdict.getByText(/^(Passes|Fails): profile/).waitFor();
  await soon(() => key.getByRole('button').allTextContents()).toEqual(['Readings']);
  // Both members were measured: a verdict on the pair as well.
  await page
    .getByRole('region', { name: 'Measured clearance of c1' })
    .getByText(/^Fails:/)
    .waitFor();
  const real = page.getByRole('checkbox', { name: 'Show the real clearance in the picture' });
  await real.check();
  await page.getByText('too little', { exact: true }).waitFor();
  await shoot('inspect-real-clearance');
  await real.uncheck();
  await choose(page, 'Set of points', /die of contour c1/);
  await verdict.getByText('D61', { exact: true }).waitFor();
  await shoot('inspect-points-read');
  await choose(page, 'Outliers', 'left out');
  await verdict.getByText('89 of 90 points count').waitFor();
  await button('Show the worst place').click();
  await shoot('inspect-worst-place');
  await page.locator('body').press('Control+z');
  await verdict.getByText('90 of 90 points count').waitFor();
  expect(troubles).toEqual([]);
});

windowTest('measuring: a radius is picked and pinned; sheets are stated and written', async () => {
  const { page, outFolder, picture: shoot, troubles } = await openTestWindow({ file: spring });
  const { picture, rows, field, button, status } = parts(page);
  await rows.first().waitFor();
  await openInspection(page, 'Measure');
  await page.getByRole('radio', { name: 'Radius' }).click();
  // The rivet hole of 2.2 mm at (3.2, 5): build/sample-contact-spring.ts.
  const edge = await pointOn(picture, { x: 3.2, y: 6.1 });
  await page.mouse.move(edge.x, edge.y);
  await page.mouse.click(edge.x, edge.y);
  await page.getByRole('status').filter({ hasText: 'radius' }).waitFor();
  await page.getByRole('button', { name: 'Pin', exact: true }).click();
  await page.getByRole('button', { name: /^Take out the radius/ }).waitFor();
  // Without a pointer: two rivet holes 5 mm apart, by their centres.
  await page.getByRole('radio', { name: 'Distance' }).click();
  for (const x of ['3.2', '8.2']) {
    await typeInto(field('x of the point'), x);
    await typeInto(field('y of the point'), '5');
    await button('Take it').click();
  }
  await page.getByRole('status').filter({ hasText: '5 mm' }).waitFor();
  await page.getByRole('button', { name: 'Pin', exact: true }).click();
  await shoot('inspect-measuring');

  await page.getByRole('radio', { name: 'Sheets' }).click();
  await typeInto(field('Revision'), 'B');
  await typeInto(field('Date'), '25 Nov 2026');
  await button('Add a chart').click();
  await shoot('inspect-sheets-stated');
  await button('Export as draft').click();
  await soon(() => status.first().textContent()).toMatch(/^Wrote \d+ files to /);
  const folder = join(outFolder, 'rain-gauge-contact-spring');
  const sheets = readdirSync(folder).filter((name) => name.endsWith('.pdf'));
  expect(sheets.sort()).toEqual(
    ['findings', 'inspection', 'overlay-part-10x', 'setup'].map(
      (kind) => `rain-gauge-contact-spring-${kind}.DRAFT.pdf`,
    ),
  );
  for (const name of sheets) expect(readFileSync(join(folder, name)).subarray(0, 5).toString()).toBe('%PDF-');
  const job = openJobFile(readFileSync(join(folder, 'rain-gauge-contact-spring.diewright.json'), 'utf8'));
  expect(job.ok && job.value.job.sheet).toMatchObject({ revision: 'B', date: '25 Nov 2026' });
  expect(job.ok && job.value.job.inspection.readings).toHaveLength(2);
  expect(troubles).toEqual([]);
});

windowTest(
  'a new drawing: changed places with their size, what was accepted stays where nothing changed',
  async () => {
    const { page, outFolder, picture: shoot, troubles } = await openTestWindow();
    const { rows, button } = parts(page);
    const [before, after] = ['plate.dxf', 'plate-b.dxf'].map((name) => join(outFolder, name)) as [
      string,
      string,
    ];
    writeFileSync(before, dxfOf([square(20)]));
    // One corner is cut off; the other three stay.
    writeFileSync(after, dxfOf([polygon([0, 0], [20, 0], [20, 17], [17, 20], [0, 20])]));
    await chooseFileInPage(page, () => button('Open a drawing or job').click(), before);
    await rows.filter({ hasText: 'Sharp inside corner of the die' }).first().waitFor();
    const accept = page.getByRole('button', { name: 'Accept as is…' });
    const count = await accept.count();
    for (let k = 0; k < count; k++) {
      await accept.first().click();
      await page.getByRole('textbox', { name: /Why is it accepted/ }).fill('agreed');
      await page.keyboard.press('Enter');
      await soon(() => page.getByText('Accepted: agreed').count()).toBe(k + 1);
    }
    await openInspection(page, 'Revision');
    await chooseFileInPage(page, () => button('Choose a job or drawing…').click(), after);
    // The cut-off corner lies 3 / √2 = 2.1213 mm from the new edge.
    await page.getByRole('button', { name: /2\.1213 mm removed/ }).waitFor();
    await shoot('inspect-revision');
    const stay = /^(\d+) stay, /.exec((await page.getByText(/\d+ stay, /).textContent()) ?? '')?.[1];
    expect(Number(stay)).toBeGreaterThanOrEqual(3);
    await button(/^Take the new drawing/).click();
    await page.getByRole('tab', { name: /^Review/ }).click();
    await soon(() => page.getByText('Accepted: agreed').count()).toBe(Number(stay));
    expect(Number(stay)).toBeLessThan(count);
    expect(troubles).toEqual([]);
  },
);

for (const theme of ['light', 'dark'] as const) {
  windowTest(`every part of inspection (${theme})`, async () => {
    const { page, picture: shoot, troubles } = await openTestWindow({ file: spring, theme });
    const { rows } = parts(page);
    await rows.first().waitFor();
    if (theme === 'dark') await page.getByRole('radio', { name: 'inch' }).click();
    for (const section of ['Clearance', 'Points', 'Measure', 'Sheets', 'Revision']) {
      await openInspection(page, section);
      await shoot(`inspect-${section.toLowerCase()}-${theme}`);
    }
    // The least window there is: nothing sticks out, with the chart below the picture too.
    await page.setViewportSize({ width: 1024, height: 640 });
    for (const section of ['Points', 'Measure', 'Sheets', 'Revision', 'Clearance']) {
      await openInspection(page, section);
      const seen = await page.evaluate(() => ({
        across: document.documentElement.scrollWidth,
        down: document.documentElement.scrollHeight,
        pane: Math.max(
          ...[...document.querySelectorAll('.side *')].map((part) => part.getBoundingClientRect().right),
        ),
      }));
      expect(seen, section).toMatchObject({ across: 1024, down: 640 });
      expect(seen.pane, section).toBeLessThanOrEqual(1024);
    }
    await shoot(`inspect-small-${theme}`);
    expect(troubles).toEqual([]);
  });
}
