import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { filletedOutline } from '../../build/bench/outlines';
import { dxfOf } from '../support/dxf-of';
import { dropFile } from './harness/drop-file';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { parts } from './support/window-parts';

windowTest('a large part is there to be looked at while it is still being proved', async () => {
  const { page, outFolder, picture: shoot, troubles } = await openTestWindow();
  const { picture } = parts(page);
  const path = join(outFolder, 'many-fingers.dxf');
  writeFileSync(path, dxfOf([filletedOutline(3000)]));
  await dropFile(page, '.window', path);

  await page.getByText('Proof by a second method is still running: no release before it.').waitFor();
  await picture.waitFor();
  expect(await page.locator('.release').getAttribute('data-released')).toBe('false');
  await shoot('proof-running');

  await page
    .getByText(/Proof by a second method, to 0\.0002 mm: cuts 0\.000\d mm into a member at most/)
    .waitFor();
  await page.getByText('(0.0005 mm allowed)', { exact: false }).waitFor();
  await shoot('proof-made');
  expect(troubles).toEqual([]);
});
