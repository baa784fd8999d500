import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import * as files from 'node:fs/promises';
import { afterEach, expect, test, vi } from 'vitest';
import { writeFilesTogether } from '../../../electron/services/write-files-together';
import { temporaryFolder } from '../../support/temporary-folder';

// The module's own functions, each of which a test may let fail once.
vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof import('node:fs/promises')>();
  return { ...real, rename: vi.fn(real.rename), open: vi.fn(real.open) };
});
afterEach(() => vi.clearAllMocks());

const systemError = (code: string) => Object.assign(new Error(code), { code, syscall: 'rename' });
const threeFiles = ['a.nc', 'b.nc', 'c.dxf'].map((name) => ({ name, text: `new ${name}` }));

test('writes all files into a folder it makes', async () => {
  const folder = join(temporaryFolder(), 'made', 'here');
  expect(await writeFilesTogether(folder, threeFiles)).toEqual({
    ok: true,
    value: threeFiles.map(({ name }) => join(folder, name)),
  });
  expect(readdirSync(folder).sort()).toEqual(['a.nc', 'b.nc', 'c.dxf']);
  expect(readFileSync(join(folder, 'b.nc'), 'utf8')).toBe('new b.nc');
});

test('replaces files of an earlier run and leaves no copies', async () => {
  const folder = temporaryFolder();
  await writeFilesTogether(folder, threeFiles);
  await writeFilesTogether(folder, [{ name: 'a.nc', text: 'newer' }]);
  expect(readFileSync(join(folder, 'a.nc'), 'utf8')).toBe('newer');
  expect(readdirSync(folder).sort()).toEqual(['a.nc', 'b.nc', 'c.dxf']);
});

test('a rename that fails in the middle takes the earlier ones back', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'a.nc'), 'old a');
  writeFileSync(join(folder, 'c.dxf'), 'old c');
  const rename = vi.mocked(files.rename);
  const real = rename.getMockImplementation();
  rename.mockImplementation(async (from, to) => {
    if (String(to).endsWith('c.dxf') && String(from).endsWith('.part')) throw systemError('EBUSY');
    await real?.(from, to);
  });
  const result = await writeFilesTogether(folder, threeFiles);
  rename.mockImplementation(real as typeof files.rename);
  expect(result).toMatchObject({ ok: false, problem: { code: 'file-busy', where: join(folder, 'c.dxf') } });
  expect(readdirSync(folder).sort()).toEqual(['a.nc', 'c.dxf']);
  expect(readFileSync(join(folder, 'a.nc'), 'utf8')).toBe('old a');
  expect(readFileSync(join(folder, 'c.dxf'), 'utf8')).toBe('old c');
});

test('a full disk while writing leaves the old files and no new ones, and the folder made goes again', async () => {
  const parent = temporaryFolder();
  const open = vi.mocked(files.open);
  const real = open.getMockImplementation();
  let opened = 0;
  open.mockImplementation(async (...args) => {
    opened += 1;
    if (opened === 3) throw systemError('ENOSPC');
    return real?.(...args) as Promise<files.FileHandle>;
  });
  const result = await writeFilesTogether(join(parent, 'x', 'y'), threeFiles);
  open.mockImplementation(real as typeof files.open);
  expect(result).toMatchObject({ problem: { code: 'disk-full' } });
  expect(readdirSync(parent)).toEqual([]);
});

test('a folder where a file should go is found before anything is written', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'a.nc'), 'old a');
  mkdirSync(join(folder, 'c.dxf'));
  expect(await writeFilesTogether(folder, threeFiles)).toMatchObject({ problem: { code: 'file-is-folder' } });
  expect(readFileSync(join(folder, 'a.nc'), 'utf8')).toBe('old a');
  expect(readdirSync(folder).sort()).toEqual(['a.nc', 'c.dxf']);
});

test('a file where the folder should be stays', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'out'), 'mine');
  expect(await writeFilesTogether(join(folder, 'out'), threeFiles)).toMatchObject({ ok: false });
  expect(readFileSync(join(folder, 'out'), 'utf8')).toBe('mine');
});

test.each(['../a.nc', 'a/b.nc', '..\\a.nc', '', '..', '/etc/a', 'C:a', 'nul.nc', 'a\u0000.nc', 'a.nc '])(
  'the name %j leads nowhere',
  async (name) => {
    const folder = join(temporaryFolder(), 'out');
    expect(await writeFilesTogether(folder, [{ name, text: 'x' }])).toMatchObject({
      problem: { code: 'file-name' },
    });
    expect(existsSync(folder)).toBe(false);
  },
);

test('two names that one disk would take for the same are refused', async () => {
  const folder = temporaryFolder();
  const pair = [
    { name: 'Die.nc', text: '1' },
    { name: 'die.nc', text: '2' },
  ];
  expect(await writeFilesTogether(folder, pair)).toMatchObject({ problem: { code: 'file-name' } });
  expect(readdirSync(folder)).toEqual([]);
});

test('a released program goes when the draft that replaces it is written, and the other way round', async () => {
  const folder = temporaryFolder();
  const names = () => readdirSync(folder).sort();
  await writeFilesTogether(folder, [
    { name: 'a-die.nc', text: '1' },
    { name: 'a-findings.csv', text: '1' },
  ]);
  await writeFilesTogether(folder, [
    { name: 'a-die.DRAFT.nc', text: '2' },
    { name: 'a-findings.csv', text: '2' },
  ]);
  expect(names()).toEqual(['a-die.DRAFT.nc', 'a-findings.csv']);
  await writeFilesTogether(folder, [{ name: 'a-die.nc', text: '3' }]);
  expect(names()).toEqual(['a-die.nc', 'a-findings.csv']);
});
