import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { parts, soon } from './support/window-parts';

const hinge = fileURLToPath(new URL('../../samples/letterbox-hinge-leaf.dxf', import.meta.url));

windowTest('the table under the pointer is copied as a spreadsheet takes it', async () => {
  const { page } = await openTestWindow({ file: hinge });
  const { rows, status } = parts(page);
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await rows.first().waitFor();
  await page.getByRole('tab', { name: 'Drawing' }).click();
  const table = page.getByRole('table', { name: 'Closed contours' });
  await table.hover();
  await page.keyboard.press('Control+c');
  await soon(() => status.textContent()).toMatch(/^Copied a table of \d+ lines/);
  const lines = (await page.evaluate(() => navigator.clipboard.readText())).trim().split('\n');
  expect(lines).toHaveLength(await table.getByRole('row').count());
  expect(lines[0]).toBe('Edge\tSize\tLayer\tSize shift');
  // The leaf's outline is taken and has no size shift (samples/README.md).
  expect(lines[1]?.split('\t')).toMatchObject({ 0: 'x c1', 3: '0 mm' });
  // Elsewhere copying is the page's own.
  await page.mouse.move(5, 5);
  await page.evaluate(() => navigator.clipboard.writeText('before'));
  await page.keyboard.press('Control+c');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe('before');
});
