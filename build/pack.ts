import { build, Platform } from 'electron-builder';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder, runNode } from './run-command';

/** `npm run pack`: builds and packs installers for the system this runs on, into dist/packages. */
const built = await runNode(['build/run-typescript.mjs', 'build/build.ts']);
if (built === 0) {
  const config = JSON.parse(
    readFileSync(join(projectFolder, 'build/electron-builder.json'), 'utf8'),
  ) as object;
  await build({
    projectDir: projectFolder,
    targets: Platform.current().createTarget(),
    config,
    publish: 'never',
  });
}
process.exitCode = built;
