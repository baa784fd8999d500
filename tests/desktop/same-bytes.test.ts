import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { outputsOf } from '../../build/golden-outputs';
import { projectFolder } from '../../build/run-command';
import { readJobFile } from '../../core/job-file';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { parts, soon, typeInto } from './support/window-parts';

windowTest('the window writes the same bytes as the command, sheets among them', async () => {
  const { page, outFolder, troubles } = await openTestWindow({
    file: join(projectFolder, 'samples/rain-gauge-contact-spring.dxf'),
  });
  await parts(page).picture.waitFor();
  await typeInto(parts(page).field('Wire diameter'), '0.15');
  await parts(page)
    .button(/^Export/)
    .click();
  await soon(() => parts(page).status.textContent()).toMatch(/^Exported|^Wrote|files/);
  const [made = ''] = readdirSync(outFolder);
  const folder = join(outFolder, made);
  const jobName = readdirSync(folder).find((name) => name.endsWith('.diewright.json')) ?? '';
  const job = readJobFile(readFileSync(join(folder, jobName), 'utf8'));
  if (!job.ok) throw new Error(job.problem.what);
  const files = outputsOf(job.value, projectFolder);
  expect(readdirSync(folder).sort()).toEqual(files.map(({ name }) => name).sort());
  for (const { name, text, isBytes } of files)
    expect(readFileSync(join(folder, name), isBytes ? 'latin1' : 'utf8') === text, name).toBe(true);
  expect(troubles).toEqual([]);
});
