import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { listPackage } from '@electron/asar';
import { Arch, build, Platform, type Configuration } from 'electron-builder';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../support/temporary-folder';

const top = fileURLToPath(new URL('../..', import.meta.url));

/**
 * The packing step itself, with a stand-in for the shell's binary, which need not be on this machine. Only the fuses
 * are left out: they are switches inside the real binary.
 */
test.skipIf(process.platform === 'win32')('packs the built program and nothing else', async () => {
  const project = temporaryFolder();
  const shell = temporaryFolder();
  const write = (folder: string, path: string, mode = 0o644) => {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), 'x', { mode });
  };
  mkdirSync(join(shell, 'resources'));
  write(shell, 'electron', 0o755);
  for (const path of ['LICENSE', 'LICENSES.chromium.html', 'version']) write(shell, path);
  for (const path of [
    'window/index.html',
    'window/assets/a.js',
    'electron/main.cjs',
    'electron/preload.cjs',
  ]) {
    write(project, `dist/${path}`);
  }
  for (const path of [
    'dist/electron/cli.cjs',
    'dist/types/a.d.ts',
    'core/a.ts',
    'node_modules/konva/index.js',
  ]) {
    write(project, path);
  }
  for (const path of ['package.json', 'LICENSE', 'build/icon']) {
    cpSync(join(top, path), join(project, path), { recursive: true });
  }
  const config = JSON.parse(readFileSync(join(top, 'build/electron-builder.json'), 'utf8')) as Configuration;
  const { electronFuses, ...rest } = config;
  expect(electronFuses).toBeDefined();

  await build({
    projectDir: project,
    targets: Platform.LINUX.createTarget('dir', Arch.x64),
    publish: 'never',
    config: { ...rest, electronDist: shell, electronVersion: '45.4.1' },
  });

  const packed = join(project, 'dist/packages/linux-unpacked');
  expect(existsSync(join(packed, 'diewright'))).toBe(true);
  const files = listPackage(join(packed, 'resources/app.asar'), { isPack: false })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => /\.\w+$|LICENSE$/.test(path));
  expect(files.sort()).toEqual([
    '/LICENSE',
    '/dist/electron/main.cjs',
    '/dist/electron/preload.cjs',
    '/dist/window/assets/a.js',
    '/dist/window/index.html',
    '/package.json',
  ]);
});
