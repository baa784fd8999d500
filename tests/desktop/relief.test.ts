import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { dxfOf } from '../support/dxf-of';
import { angleShape } from '../support/shapes';
import { dropFile } from './harness/drop-file';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { choose, parts, pointOn, soon, typeInto } from './support/window-parts';

for (const theme of ['light', 'dark'] as const) {
  windowTest(`a relief below a land: typed, seen in both planes, written, undone (${theme})`, async () => {
    const { page, outFolder, picture: shoot, troubles } = await openTestWindow({ theme });
    const { picture, rows, row, field, button, status } = parts(page);
    const path = join(outFolder, 'bracket.dxf');
    writeFileSync(path, dxfOf([angleShape(10, 4)]));
    await dropFile(page, '.window', path);
    await rows.first().waitFor();
    expect(await button('Exit face').count()).toBe(0);

    await choose(page, 'Die relief', /^relief below a land/);
    await row(/The land lasts for 30 regrinds/).waitFor();
    await typeInto(field('Relief angle'), '1,5°');
    await typeInto(field('Land height'), '5 mm');
    expect(await status.textContent()).toBe('Land 5 mm');
    await row(/The land lasts for 50 regrinds/).waitFor();
    await shoot(`relief-${theme}`);

    // (25 − 5)·tan 1.5° = 0.5237 mm: seen beside the corner of the L at (4, 4).
    await button('All about the relief').click();
    await page.getByText('0.5237 mm larger on each side').waitFor();
    await shoot(`relief-panel-${theme}`);
    await page.keyboard.press('Escape');
    const corner = await pointOn(picture, { x: 4, y: 4 });
    await page.mouse.move(corner.x, corner.y);
    for (let k = 0; k < 4; k++) await page.mouse.wheel(0, -300);
    await shoot(`relief-corner-${theme}`);
    await button('Exit face').click();
    await soon(() => button('Exit face').getAttribute('aria-pressed')).toBe('false');

    await button('Export draft').click();
    await soon(() => status.textContent()).toMatch(/^Wrote \d+ files to /);
    const folder = join(outFolder, 'bracket');
    const die = readdirSync(folder).find((name) => name.includes('die') && name.endsWith('.nc')) ?? '';
    expect(readFileSync(join(folder, die), 'utf8')).toMatch(/ U-?0\.52372 V/);

    await page.keyboard.press('Control+z');
    expect(await field('Land height').inputValue()).toBe('3 mm');
    for (let k = 0; k < 2; k++) await page.keyboard.press('Control+z');
    await soon(() => button('Exit face').count()).toBe(0);
    expect(troubles).toEqual([]);
  });
}

windowTest(
  'a tapered cut is played: a line with U and V shows the wire leaning, lower and upper end',
  async () => {
    const { page, outFolder, picture: shoot, troubles } = await openTestWindow({ theme: 'light' });
    const { rows, row, field } = parts(page);
    const path = join(outFolder, 'bracket.dxf');
    writeFileSync(path, dxfOf([angleShape(10, 4)]));
    await dropFile(page, '.window', path);
    await rows.first().waitFor();
    await choose(page, 'Die relief', /^taper from the cutting edge/);
    await typeInto(field('Relief angle'), '3');
    await row(/Every regrind opens the die/).waitFor();

    await page.getByRole('tab', { name: 'Cut' }).click();
    await page.getByRole('listbox', { name: 'Program' }).focus();
    await page.keyboard.press('End');
    // 25 tan 3° = 1.31019 mm.
    const leaning = page.getByRole('option').filter({ hasText: /G01 .*V-1\.31019/ });
    await shoot('relief-replay');
    await leaning.first().click();
    await soon(() => page.getByRole('option', { selected: true }).textContent()).toMatch(/V-1\.31019/);
    await page.getByRole('application').focus();
    await page.keyboard.press('f');
    await shoot('relief-replay');
    expect(troubles).toEqual([]);
  },
);
