import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build as buildWindow, type Plugin } from 'vite';
import { bundlePrograms } from './bundle-programs';
import { projectFolder } from './run-command';
import { licenceList, shippedPackages } from './shipped-licences';

/**
 * `npm run build`: the page into dist/window, with the licences of all that is shipped; the shell, its preload script, the
 * local window and the command into dist/electron.
 */
const modules = new Set<string>();
const noteModules = (): Plugin => ({
  name: 'note-modules',
  generateBundle(_options, bundle) {
    for (const chunk of Object.values(bundle))
      if (chunk.type === 'chunk') for (const file of Object.keys(chunk.modules)) modules.add(file);
  },
});

await buildWindow({
  configFile: join(projectFolder, 'build/vite.config.ts'),
  logLevel: 'warn',
  plugins: [noteModules()],
  worker: { plugins: () => [noteModules()] },
});
for (const file of await bundlePrograms(projectFolder, join(projectFolder, 'dist/electron')))
  modules.add(file);
writeFileSync(
  join(projectFolder, 'dist/window/licences.txt'),
  licenceList(shippedPackages(modules), projectFolder),
);
