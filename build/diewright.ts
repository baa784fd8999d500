import { join } from 'node:path';
import { bundlePrograms } from './bundle-programs';
import { projectFolder, runNode } from './run-command';

/** `npm run diewright -- FILE --out FOLDER`: bundles the headless command and runs it where npm was called. */
const folder = join(projectFolder, 'dist/electron');
await bundlePrograms(projectFolder, folder, ['cli']);
process.exitCode = await runNode(
  [join(folder, 'cli.cjs'), ...process.argv.slice(2)],
  process.env['INIT_CWD'],
);
