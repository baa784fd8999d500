import {
  chmodSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { saveAtomically } from '../../../electron/services/save-atomically';
import { temporaryFolder } from '../../support/temporary-folder';

const posix = process.platform !== 'win32';

test('writes a new file and replaces an old one, and leaves nothing beside it', async () => {
  const folder = temporaryFolder();
  const path = join(folder, 'bell.diewright.json');
  expect(await saveAtomically(path, 'first')).toEqual({ ok: true, value: null });
  expect(await saveAtomically(path, 'second')).toEqual({ ok: true, value: null });
  expect(readFileSync(path, 'utf8')).toBe('second');
  expect(readdirSync(folder)).toEqual(['bell.diewright.json']);
});

test.runIf(posix)(
  'keeps the permissions of the file it replaces, whatever the mask of the process',
  async () => {
    const path = join(temporaryFolder(), 'bell.diewright.json');
    writeFileSync(path, 'first');
    chmodSync(path, 0o666);
    const mask = process.umask(0o077);
    try {
      await saveAtomically(path, 'second');
    } finally {
      process.umask(mask);
    }
    expect(statSync(path).mode & 0o777).toBe(0o666);
  },
);

test.runIf(posix)('writes through a link and keeps the link', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'real.json'), 'first');
  symlinkSync(join(folder, 'real.json'), join(folder, 'link.json'));
  await saveAtomically(join(folder, 'link.json'), 'second');
  expect(lstatSync(join(folder, 'link.json')).isSymbolicLink()).toBe(true);
  expect(readFileSync(join(folder, 'real.json'), 'utf8')).toBe('second');
});

test('a folder that is missing, and a folder in the way, are problems and leave nothing behind', async () => {
  const folder = temporaryFolder();
  const missing = join(folder, 'none', 'bell.json');
  expect(await saveAtomically(missing, 'x')).toMatchObject({
    problem: { code: 'folder-missing', where: missing },
  });
  mkdirSync(join(folder, 'bell.json'));
  expect(await saveAtomically(join(folder, 'bell.json'), 'x')).toMatchObject({ ok: false });
  expect(readdirSync(folder)).toEqual(['bell.json']);
  expect(readdirSync(join(folder, 'bell.json'))).toEqual([]);
});
