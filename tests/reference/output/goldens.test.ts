import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { goldenJobs, goldenLines, outputsOf } from '../../../build/golden-outputs';
import { projectFolder } from '../../../build/run-command';

const folder = join(projectFolder, 'tests/goldens');

// Where these differ and the change is meant, `npm run goldens` writes them anew; the difference is then there to be read.
it('the text files of a released job are those that are kept, to the byte', () => {
  const released = goldenJobs(projectFolder).at(-1);
  if (!released) throw new Error('no golden job');
  const files = outputsOf(released.job, projectFolder).filter(({ isBytes }) => !isBytes);
  expect(files.map(({ name }) => name).sort()).toEqual(readdirSync(join(folder, 'released')).sort());
  for (const { name, text } of files)
    expect(text, name).toBe(readFileSync(join(folder, 'released', name), 'utf8'));
});

it('every file of every golden job, sheets among them, has the fingerprint that is kept', () => {
  expect(goldenLines(projectFolder).split('\n')).toEqual(
    readFileSync(join(folder, 'fingerprints.txt'), 'utf8').split('\n'),
  );
});
