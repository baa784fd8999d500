import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bundlePrograms } from '../../build/bundle-programs';
import { projectFolder } from '../../build/run-command';
import { isPermissive, licenceList, packageFolderOf, shippedPackages } from '../../build/shipped-licences';
import { temporaryFolder } from '../support/temporary-folder';

describe('licences of what is shipped', () => {
  it('every package in the command and the shell is permissive, stated with its words', async () => {
    const packages = shippedPackages(await bundlePrograms(projectFolder, temporaryFolder(), ['cli', 'main']));
    const names = packages.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['clipper-lib', 'flatbush', 'jspdf', 'zod']));
    expect(packages.filter(({ licence }) => !isPermissive(licence))).toEqual([]);
    const list = licenceList(packages, projectFolder);
    for (const { name, version, licence } of packages)
      expect(list).toContain(`${name} ${version} (${licence})`);
    expect(list).toContain('Bitstream Vera');
  });

  it('so is every package in the window, by the list that the build wrote', () => {
    const list = readFileSync(join(projectFolder, 'dist/window/licences.txt'), 'utf8');
    const rows = [...list.matchAll(/^ {2}(\S.*) \((.+)\)$/gm)].map(([, name = '', licence = '']) => ({
      name,
      licence,
    }));
    expect(rows.length).toBeGreaterThan(40);
    const [fonts, ...packages] = rows;
    expect(fonts?.licence).toBe('Bitstream Vera');
    expect(packages.filter(({ licence }) => !isPermissive(licence))).toEqual([]);
  });

  it('tells permissive expressions from others', () => {
    for (const good of ['MIT', '(MIT AND Zlib)', '(MPL-2.0 OR Apache-2.0)', 'BSD-3-Clause'])
      expect(isPermissive(good)).toBe(true);
    for (const bad of ['GPL-3.0', 'MIT AND GPL-2.0', 'SEE LICENSE IN README.md', 'not stated', 'MPL-2.0'])
      expect(isPermissive(bad)).toBe(false);
  });

  it('knows the package of a module wherever it is nested', () => {
    expect(packageFolderOf('/a/node_modules/pako/dist/pako.mjs')).toBe('/a/node_modules/pako');
    expect(packageFolderOf('\0/a/node_modules/x/node_modules/@y/z/i.js')).toBe(
      '/a/node_modules/x/node_modules/@y/z',
    );
    expect(packageFolderOf('/a/core/index.ts')).toBeNull();
  });
});

/**
 * Tools that only build and test may also be under file-level copyleft or give a choice; nothing of them is shipped, as
 * the tests above show.
 */
const forToolsOnly = new Set([
  'MPL-2.0',
  'Python-2.0',
  'WTFPL',
  '(EDL-1.0 OR EPL-1.0)',
  'MIT OR SEE LICENSE IN FEEL-FREE.md',
  'SEE LICENSE IN README.md AND LICENSE',
]);

it('every package of the lock file has a known licence and an exact version', () => {
  const lock = JSON.parse(readFileSync(join(projectFolder, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, { license?: string; version?: string; integrity?: string }>;
  };
  for (const [path, { license = 'not stated', version, integrity }] of Object.entries(lock.packages)) {
    if (path === '') continue;
    expect(
      isPermissive(license === 'BSL' ? 'BSL-1.0' : license) || forToolsOnly.has(license),
      `${path}: ${license}`,
    ).toBe(true);
    expect(version, path).toMatch(/^\d+\.\d+\.\d+/);
    expect(integrity, path).toMatch(/^sha512-/);
  }
});
