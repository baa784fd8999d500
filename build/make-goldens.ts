import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { goldenJobs, goldenLines, outputsOf } from './golden-outputs';
import { projectFolder } from './run-command';

/**
 * `npm run goldens`: what the golden jobs give now, into tests/goldens: the fingerprints of all files, and one job's text
 * files whole, so that a change of what is written can be read as a difference.
 */
const folder = join(projectFolder, 'tests/goldens');
rmSync(folder, { recursive: true, force: true });
mkdirSync(join(folder, 'released'), { recursive: true });
writeFileSync(join(folder, 'fingerprints.txt'), goldenLines(projectFolder));
const released = goldenJobs(projectFolder).at(-1);
if (released)
  for (const { name, text, isBytes } of outputsOf(released.job, projectFolder))
    if (!isBytes) writeFileSync(join(folder, 'released', name), text);
