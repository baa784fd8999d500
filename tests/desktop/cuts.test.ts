import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { jobOnDrawing } from '../../core/job-file';
import { cutOfPlan } from '../../core/layout-of-cut';
import { createPipeline } from '../../core/pipeline';
import type { Point } from '../../core/geometry/contour';
import type { Plan } from '../../core/plan';
import { cutPlaces } from '../../renderer/picture/cut-places';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { choose, parts, pointOn, soon, typeInto, viewOf } from './support/window-parts';

const hinge = fileURLToPath(new URL('../../samples/letterbox-hinge-leaf.dxf', import.meta.url));

/** The plan that the window shows when it has just opened the drawing: the same job gives the same plan. */
function planOf(file: string): Plan {
  const plan = createPipeline().plan(jobOnDrawing(file, readFileSync(file)));
  if (!plan.ok) throw new Error(plan.problem.what);
  return plan.value;
}

function placeOf(plan: Plan, cutId: string) {
  const place = cutPlaces(plan).find((one) => one.cutId === cutId);
  const tab = cutOfPlan(plan, cutId)?.cut.tabs[0];
  if (!place?.start || !tab) throw new Error(`no start hole or tab in ${cutId}`);
  const along = { x: (tab.to.x - tab.from.x) / tab.length, y: (tab.to.y - tab.from.y) / tab.length };
  return { hole: place.start, at: place.at, along };
}

async function drag(page: Page, picture: Locator, from: Point, to: Point, drop = true): Promise<void> {
  const [start, end] = [await pointOn(picture, from), await pointOn(picture, to)];
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move(end.x, end.y, { steps: 6 });
  if (drop) await page.mouse.up();
}

const die = 'blank-c1-die-1';

windowTest('with Space held a drag moves the picture, even from a start hole', async () => {
  const { page } = await openTestWindow({ file: hinge });
  const { picture, rows } = parts(page);
  await rows.first().waitFor();
  const { hole } = placeOf(planOf(hinge), die);
  const before = await viewOf(picture);
  const to = { x: hole.x + 40 / before.scale, y: hole.y };
  await page.keyboard.down('Space');
  await drag(page, picture, hole, to);
  await page.keyboard.up('Space');
  const after = await viewOf(picture);
  expect((before.x - after.x) * before.scale).toBeCloseTo(40, 0);
  expect(await page.title()).not.toContain('•');
  expect(await page.getByRole('dialog').count()).toBe(0);
  // Without it the same drag takes the hole along.
  await drag(page, picture, hole, { x: hole.x + 60 / after.scale, y: hole.y }, false);
  await page.locator('.cut-drag-note').waitFor();
  expect((await viewOf(picture)).x).toBe(after.x);
  await page.keyboard.press('Escape');
});

windowTest('a start hole is dragged, refused with the reason where it may not be, and undone', async () => {
  const { page, picture: shoot, troubles } = await openTestWindow({ file: hinge });
  const { picture, rows, field, status } = parts(page);
  await rows.first().waitFor();
  const { hole, at } = placeOf(planOf(hinge), die);
  const note = page.locator('.cut-drag-note');

  // 2 mm farther from the path: allowed.
  const away = {
    x: hole.x + 2 * Math.sign(hole.x - at.x || 0.1),
    y: hole.y + 2 * Math.sign(hole.y - at.y || 0.1),
  };
  await drag(page, picture, hole, away, false);
  await note.waitFor();
  expect(await note.getAttribute('data-refused')).toBe('false');
  await shoot('cut-drag-allowed');
  await page.mouse.up();
  await soon(() => status.textContent()).toBe(`Start hole of ${die}`);
  // The card of the cut says where it is now.
  const moved = await pointOn(picture, away);
  await soon(async () => {
    await page.mouse.click(moved.x, moved.y);
    return page.getByRole('dialog', { name: 'Cut' }).count();
  }).toBe(1);
  const x = Number.parseFloat(await field('Start hole x').inputValue());
  expect(Math.abs(x - away.x)).toBeLessThan(0.2);
  await shoot('cut-card');
  await page.getByRole('dialog', { name: 'Cut' }).getByRole('button', { name: 'Close' }).click();

  // Onto the path: refused, and it stays where it was.
  await drag(page, picture, away, at, false);
  await soon(() => note.getAttribute('data-refused')).toBe('true');
  expect(await note.textContent()).toContain('too near the path');
  await shoot('cut-drag-refused');
  await page.mouse.up();
  await soon(() => status.textContent()).toContain('Not there: too near the path');

  await page.locator('body').press('Control+z');
  const back = await pointOn(picture, hole);
  await soon(async () => {
    await page.mouse.click(back.x, back.y);
    return page.getByRole('dialog', { name: 'Cut' }).count();
  }).toBe(1);
  expect(Number.parseFloat(await field('Start hole x').inputValue())).toBeCloseTo(hole.x, 3);
  expect(troubles).toEqual([]);
});

windowTest('a tab and its lead-in are dragged along the contour; Escape gives the drag up', async () => {
  const { page } = await openTestWindow({ file: hinge });
  const { picture, rows, field, status } = parts(page);
  await rows.first().waitFor();
  const { at, along } = placeOf(planOf(hinge), die);
  const to = { x: at.x + 3 * along.x, y: at.y + 3 * along.y };

  await picture.focus();
  await drag(page, picture, at, to, false);
  await page.locator('.cut-drag-note').waitFor();
  await page.keyboard.press('Escape');
  await page.locator('.cut-drag-note').waitFor({ state: 'detached' });
  await page.mouse.up();
  expect(await status.textContent()).not.toContain('Place of the lead-in');

  await drag(page, picture, at, to);
  await soon(() => status.textContent()).toBe(`Place of the lead-in of ${die}`);
  const moved = await pointOn(picture, to);
  await soon(async () => {
    await page.mouse.click(moved.x, moved.y);
    return page.getByRole('dialog', { name: 'Cut' }).count();
  }).toBe(1);
  const shown = [
    Number.parseFloat(await field('Lead-in x').inputValue()),
    Number.parseFloat(await field('Lead-in y').inputValue()),
  ];
  expect(Math.hypot((shown[0] ?? NaN) - to.x, (shown[1] ?? NaN) - to.y)).toBeLessThan(0.3);
});

windowTest(
  'everything of a cut is reached and typed by keyboard; blocks and order stand in their panel',
  async () => {
    const { page, picture: shoot, troubles } = await openTestWindow({ file: hinge });
    const { rows, field, button, status } = parts(page);
    await rows.first().waitFor();
    await page.keyboard.press('.');
    const card = page.getByRole('dialog', { name: 'Cut' });
    await card.getByText(die).waitFor();
    await typeInto(field('Diameter of this start hole'), '2 mm');
    await soon(() => status.textContent()).toBe(`Start hole diameter of ${die}`);
    await choose(page, 'Tabs of this cut', '2');
    await card.getByText(`${die}, stretch 1 of 2`).waitFor();
    await card.getByRole('button', { name: 'As all others', exact: true }).click();
    await card.getByText(`${die}, stretch`).waitFor({ state: 'detached' });
    await card.getByRole('button', { name: 'Close' }).click();

    await button(/^Start holes, lead-ins and tabs:/).click();
    await choose(page, 'Shape of the lead-in', 'by a tangent arc');
    await typeInto(field('Lead-in radius'), '0.3');
    await shoot('lead-panel');
    await page.keyboard.press('Escape');

    await button(/^Blocks:/).click();
    await choose(page, 'Order of work', 'what runs unattended first');
    await page.getByRole('table').filter({ hasText: 'from hole to hole' }).first().waitFor();
    await typeInto(field('Left edge of block die'), '-40');
    await page.getByRole('button', { name: 'As small as can be' }).click();
    await shoot('blocks-panel');
    expect(troubles).toEqual([]);
  },
);
