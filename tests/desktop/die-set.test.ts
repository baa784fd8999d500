import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { choose, parts, soon } from './support/window-parts';

const sample = (name: string) => fileURLToPath(new URL(`../../samples/${name}`, import.meta.url));

for (const theme of ['light', 'dark'] as const) {
  windowTest(`the die set: strip, two stations, force, block, and its section (${theme})`, async () => {
    const { page, picture, troubles } = await openTestWindow({
      file: sample('letterbox-hinge-leaf.dxf'),
      theme,
      height: 1400,
    });
    const { rows } = parts(page);
    await rows.first().waitFor();
    await page.locator('body').press('s');
    const pane = page.getByRole('region', { name: 'Die set' });
    await pane.waitFor();
    await choose(page, 'Arrangement of the tool', /in one station/);
    await choose(page, 'Blanks on the strip', /one up/);
    await page.locator('body').press('f');
    await soon(() => pane.getByText('Feed', { exact: true }).count()).toBe(1);
    await picture(`die-set-${theme}`);
    await pane.getByRole('heading', { name: 'Sections' }).scrollIntoViewIfNeeded();
    await picture(`die-set-force-${theme}`);
    expect(troubles).toEqual([]);
  });
}
