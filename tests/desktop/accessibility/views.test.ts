import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { openTestWindow } from '../harness/open-test-window';
import { windowTest } from '../harness/test-browser';
import { parts } from '../support/window-parts';
import { audit } from './audit';

const spring = fileURLToPath(new URL('../../../samples/rain-gauge-contact-spring.dxf', import.meta.url));

windowTest('the start page keeps nobody from working', async () => {
  const { page } = await openTestWindow();
  await page.getByRole('heading', { level: 2 }).first().waitFor();
  expect(await audit(page)).toEqual([]);
});

for (const pane of ['Review', 'Drawing', 'Cut', 'Die set', 'Inspect']) {
  windowTest(`the ${pane} pane keeps nobody from working`, async () => {
    const { page } = await openTestWindow({ file: spring });
    await parts(page).rows.first().waitFor();
    await page.getByRole('tab', { name: pane }).click();
    await page.getByRole('tabpanel', { name: pane }).waitFor();
    await page.mouse.move(0, 0);
    expect(await audit(page)).toEqual([]);
  });
}
