import { join } from 'node:path';
import { build as buildWindow } from 'vite';
import { bundlePrograms } from './bundle-programs';
import { projectFolder } from './run-command';

/**
 * `npm run build`: the page into dist/window; the shell, its preload script, the local window and the command into
 * dist/electron.
 */
await buildWindow({ configFile: join(projectFolder, 'build/vite.config.ts'), logLevel: 'warn' });
await bundlePrograms(projectFolder, join(projectFolder, 'dist/electron'));
