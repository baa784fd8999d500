import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { makeFolder } from '../../../electron/services/make-folder';
import { writeFilesTogether } from '../../../electron/services/write-files-together';
import { temporaryFolder } from '../../support/temporary-folder';

test('makes what is missing and says from where on', async () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'a'));
  expect(await makeFolder(join(folder, 'a/b/c'))).toBe(join(folder, 'a/b'));
  expect(existsSync(join(folder, 'a/b/c'))).toBe(true);
  expect(await makeFolder(join(folder, 'a/b/c'))).toBeUndefined();
});

test('a file in the way is no folder', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'a'), '');
  await expect(makeFolder(join(folder, 'a'))).rejects.toThrow(/EEXIST/);
  await expect(makeFolder(join(folder, 'a/b'))).rejects.toThrow(/ENOTDIR/);
});

test.runIf(existsSync('/proc/self'))(
  'a folder that takes no folders is a problem, not a wait without end',
  async () => {
    const result = await writeFilesTogether('/proc/nowhere/made', [{ name: 'a.nc', text: 'M30' }]);
    expect(result).toMatchObject({ ok: false, problem: { code: 'folder-missing' } });
  },
);
