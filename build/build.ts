import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { build as bundle, type BuildOptions } from 'esbuild';
import { build as buildWindow } from 'vite';
import { projectFolder } from './run-command';

/**
 * `npm run build`: the page into dist/window; the shell, its preload script, the local window and the command into
 * dist/electron, each one file without any package beside it, so that what is shipped is what was tested.
 */
const outFolder = join(projectFolder, 'dist/electron');

const shared: BuildOptions = {
  bundle: true,
  platform: 'node',
  target: 'node20',
  external: ['electron'],
  logLevel: 'warning',
  legalComments: 'eof',
};

// CommonJS for the shell: a sandboxed preload script can be nothing else, and both then load the same way. The
// others are CommonJS too, since some bundled packages still call require.
const programs = {
  main: 'electron/main/main.ts',
  preload: 'electron/preload/preload.ts',
  cli: 'electron/cli/cli.ts',
  'local-window': 'electron/local-window/local-window.ts',
};

rmSync(outFolder, { recursive: true, force: true });
await buildWindow({ configFile: join(projectFolder, 'build/vite.config.ts'), logLevel: 'warn' });
for (const [name, entry] of Object.entries(programs)) {
  await bundle({
    ...shared,
    format: 'cjs',
    entryPoints: [join(projectFolder, entry)],
    outfile: join(outFolder, `${name}.cjs`),
  });
}
