import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { parts, soon, typeInto } from './support/window-parts';

const spring = fileURLToPath(new URL('../../samples/rain-gauge-contact-spring.dxf', import.meta.url));

/** Drafts as a program that has ended leaves them: the tests' own process serves all its windows. */
function asIfEnded(folder: string): void {
  const ended = spawnSync(process.execPath, ['-e', '']).pid;
  for (const name of readdirSync(folder).filter((file) => file.endsWith('.draft'))) {
    const path = join(folder, name);
    writeFileSync(path, readFileSync(path, 'utf8').replace(`"process":${process.pid}`, `"process":${ended}`));
  }
}

windowTest('work that was not saved is offered to the next window, opened, and saved', async () => {
  const draftFolder = mkdtempSync(join(tmpdir(), 'diewright-drafts-'));
  const first = await openTestWindow({ file: spring, draftFolder });
  await parts(first.page).picture.waitFor();
  await typeInto(parts(first.page).field('Wire diameter'), '0.15');
  await soon(async () => existsSync(draftFolder) && readdirSync(draftFolder).length).toBe(2);
  await first.page.close({ runBeforeUnload: false });
  asIfEnded(draftFolder);

  const { page, picture, troubles } = await openTestWindow({ draftFolder, theme: 'dark' });
  const dialog = page.getByRole('dialog', { name: 'Work that was not saved' });
  await dialog.waitFor();
  await picture('unsaved-work-dark');
  await dialog.getByRole('button', { name: 'Open the unsaved work on rain-gauge-contact-spring' }).click();
  await soon(() => parts(page).field('Wire diameter').inputValue()).toBe('0.15 mm');
  await parts(page).picture.waitFor();
  expect(await page.title()).toContain('•');
  await page.locator('body').press('Control+s');
  await soon(() => parts(page).status.textContent()).toMatch(/^Saved rain-gauge-contact-spring/);
  await soon(async () => readdirSync(draftFolder)).toEqual([]);
  expect(troubles).toEqual([]);
});

windowTest('a job file that somebody else has changed is asked about before it is replaced', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'diewright-clash-'));
  const { page, outFolder, picture } = await openTestWindow({
    file: spring,
    draftFolder: join(folder, 'drafts'),
  });
  await parts(page).picture.waitFor();
  await typeInto(parts(page).field('Wire diameter'), '0.15');
  await page.locator('body').press('Control+s');
  await soon(() => parts(page).status.textContent()).toMatch(/^Saved/);
  const path = join(outFolder, 'rain-gauge-contact-spring.diewright.json');
  writeFileSync(path, 'theirs');
  await typeInto(parts(page).field('Wire diameter'), '0.1');
  await page.locator('body').press('Control+s');
  const dialog = page.getByRole('dialog', { name: /was changed by somebody else/ });
  await dialog.waitFor();
  await picture('changed-elsewhere');
  expect(readFileSync(path, 'utf8')).toBe('theirs');
  await dialog.getByRole('button', { name: 'Replace their version' }).click();
  await soon(async () => readFileSync(path, 'utf8').includes('"diameter": 0.1')).toBe(true);
  expect(readFileSync(path.replace('.diewright.json', '.previous.diewright.json'), 'utf8')).toBe('theirs');
});
