import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { findElectron } from '../../build/find-electron';
import { temporaryFolder } from '../support/temporary-folder';

function binary(folder: string, name: string): string {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, name), '');
  chmodSync(join(folder, name), 0o755);
  return join(folder, name);
}

test('a package without its binary has none', () => {
  const folder = temporaryFolder();
  expect(findElectron(folder, {})).toBeNull();
  writeFileSync(join(folder, 'path.txt'), 'electron');
  expect(findElectron(folder, {})).toBeNull();
});

test('the binary is where the package says', () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'path.txt'), 'electron');
  const path = binary(join(folder, 'dist'), 'electron');
  expect(findElectron(folder, {})).toBe(path);
});

test('another folder can be named', () => {
  const folder = temporaryFolder();
  const path = binary(join(folder, 'elsewhere'), 'electron');
  expect(findElectron(folder, { ELECTRON_OVERRIDE_DIST_PATH: join(folder, 'elsewhere') })).toBe(path);
  expect(findElectron(folder, { ELECTRON_OVERRIDE_DIST_PATH: join(folder, 'none') })).toBeNull();
});
