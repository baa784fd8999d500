import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openFile } from '../../../electron/services/open-file';
import { temporaryFolder } from '../../support/temporary-folder';

test('gives the name and the very bytes', async () => {
  const path = join(temporaryFolder(), 'spring.dxf');
  const bytes = Uint8Array.from({ length: 256 }, (_, at) => at);
  writeFileSync(path, bytes);
  expect(await openFile(path)).toEqual({ ok: true, value: { name: 'spring.dxf', bytes } });
});

test('a file over the limit is refused, one at the limit is not', async () => {
  const path = join(temporaryFolder(), 'spring.dxf');
  writeFileSync(path, 'x'.repeat(1001));
  expect(await openFile(path, 1000)).toMatchObject({
    ok: false,
    problem: { code: 'file-too-large', where: path },
  });
  expect(await openFile(path, 1001)).toMatchObject({ ok: true });
});

test('says what is wrong with a missing file and with a folder', async () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'drawings'));
  expect(await openFile(join(folder, 'none.dxf'))).toMatchObject({ problem: { code: 'file-missing' } });
  expect(await openFile(join(folder, 'drawings'))).toMatchObject({ problem: { code: 'file-is-folder' } });
});

test.skipIf(process.platform === 'win32')('does not read from a device', async () => {
  expect(await openFile('/dev/zero')).toMatchObject({ problem: { code: 'file-no-file' } });
});
