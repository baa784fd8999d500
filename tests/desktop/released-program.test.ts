import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { createPipeline, jobOnDrawing, writeJobFile } from '../../core';
import { dxfOf } from '../support/dxf-of';
import { roundedRectangle } from '../support/shapes';
import { dropFile } from './harness/drop-file';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { parts, soon } from './support/window-parts';

/** A job that is released, and its programs, in a folder. */
function releasedJob(folder: string) {
  const pipeline = createPipeline();
  const drawn = jobOnDrawing(
    'cover-plate.dxf',
    new TextEncoder().encode(dxfOf([roundedRectangle(20, 10, 1)])),
  );
  const planned = pipeline.plan(drawn);
  if (!planned.ok) throw new Error(planned.problem.what);
  const open = planned.value.findings.filter(({ weight }) => weight === 'decide');
  const job = { ...drawn, settled: Object.fromEntries(open.map(({ key }) => [key, { reason: 'agreed' }])) };
  const files = pipeline.files(job);
  if (!files.ok) throw new Error(files.problem.what);
  mkdirSync(folder, { recursive: true });
  for (const { name, text } of files.value) writeFileSync(join(folder, name), text);
  const programs = readdirSync(folder).filter((name) => name.endsWith('.nc'));
  const path = join(folder, 'cover-plate.diewright.json');
  writeFileSync(path, writeJobFile(job));
  return { path, programs: programs.map((name) => join(folder, name)) };
}

for (const theme of ['light', 'dark'] as const) {
  windowTest(`a program dropped onto its job is held against it (${theme})`, async () => {
    const { page: first, outFolder: folder } = await openTestWindow();
    await first.close();
    const { path, programs } = releasedJob(join(folder, 'made'));
    const { page, picture, troubles } = await openTestWindow({ file: path, theme });
    await parts(page).picture.waitFor();
    expect(programs).toHaveLength(2);
    for (const program of programs) {
      await dropFile(page, '.window', program);
      const dialog = page.getByRole('dialog', { name: 'The program belongs to the job' });
      await dialog.getByText('It belongs to this job.').waitFor();
      await dialog.getByRole('button', { name: 'Close' }).click();
      await dialog.waitFor({ state: 'detached' });
    }
    const [program = ''] = programs;
    writeFileSync(program, readFileSync(program, 'utf8').replace(/X(-?)\d/, 'X$19'));
    await dropFile(page, '.window', program);
    const dialog = page.getByRole('dialog', { name: 'Do not run this program' });
    await dialog.getByText('It was changed after it was released').waitFor();
    await picture(`program-changed-${theme}`);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    // Looking at a program changes nothing in the job.
    expect(await page.title()).not.toContain('•');
    expect(troubles).toEqual([]);
  });
}

windowTest('a program without a job asks for the job', async () => {
  const { page, outFolder } = await openTestWindow();
  const path = join(outFolder, 'lonely.nc');
  writeFileSync(path, '(SOMETHING)\nM02\n');
  await dropFile(page, '.window', path);
  await soon(() => page.getByRole('alert').textContent()).toContain('Open the job first');
});
