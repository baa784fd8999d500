import * as files from 'node:fs/promises';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { createJobPlaces } from '../../../electron/services/job-places';
import { temporaryFolder } from '../../support/temporary-folder';

vi.mock('node:fs/promises', async (importOriginal) => {
  const real = await importOriginal<typeof files>();
  return Object.fromEntries(
    Object.entries(real).map(([name, value]) => [name, typeof value === 'function' ? vi.fn(value) : value]),
  );
});

/** An error as the operating system gives it (errno(3)). */
const systemError = (code: string) => Object.assign(new Error(code), { code, syscall: 'any' });

const troubles = [
  ['a full disk', 'ENOSPC', 'disk-full'],
  ['a used-up quota', 'EDQUOT', 'disk-full'],
  ['a disk that can only be read', 'EROFS', 'file-denied'],
  ['a folder without the right to write', 'EACCES', 'file-denied'],
  ['a network drive that is gone', 'ESTALE', 'disk-gone'],
  ['a drive that no longer answers', 'EIO', 'disk-gone'],
  ['a network that is down', 'ENETDOWN', 'disk-gone'],
  ['a server that does not answer', 'ETIMEDOUT', 'disk-gone'],
] as const;

/** Which calls of the file system may fail while a job is saved, and how. */
const steps = {
  'when the temporary file is made': (code: string) =>
    vi.mocked(files.open).mockRejectedValueOnce(systemError(code)),
  'in the middle of writing': (code: string) => failHandle('writeFile', code),
  'when the disk is asked to keep it': (code: string) => failHandle('sync', code),
  'when it takes its place': (code: string) => {
    const real = vi.mocked(files.rename).getMockImplementation();
    vi.mocked(files.rename).mockImplementation(async (from, to) => {
      if (String(to).endsWith('bell.diewright.json')) throw systemError(code);
      await real?.(from, to);
    });
  },
} as const;

function failHandle(call: 'writeFile' | 'sync', code: string): void {
  const real = vi.mocked(files.open).getMockImplementation();
  vi.mocked(files.open).mockImplementationOnce(async (...args) => {
    const handle = (await real?.(...args)) as files.FileHandle;
    if (call === 'writeFile') await handle.writeFile('half of ');
    handle[call] = () => Promise.reject(systemError(code));
    return handle;
  });
}

const originals = new Map(
  (['open', 'rename'] as const).map((name) => [name, vi.mocked(files[name]).getMockImplementation()]),
);
afterEach(() => {
  vi.mocked(files.open).mockImplementation(originals.get('open') as typeof files.open);
  vi.mocked(files.rename).mockImplementation(originals.get('rename') as typeof files.rename);
});

describe.each(troubles)('%s', (_, code, problem) => {
  test.each(Object.keys(steps) as (keyof typeof steps)[])(
    '%s: said, nothing lost, and a later save goes on',
    async (step) => {
      const folder = temporaryFolder();
      const path = join(folder, 'bell.diewright.json');
      writeFileSync(path, 'before');
      const places = createJobPlaces();
      expect((await places.open(path)).ok).toBe(true);

      steps[step](code);
      const failed = await places.save(path, 'after', false);
      expect(failed).toMatchObject({ ok: false, problem: { code: problem, where: path } });
      if (!failed.ok) expect(failed.problem.whatToDo).not.toBe('');
      expect(readFileSync(path, 'utf8')).toBe('before');
      // The version it would have replaced may already be kept; no half-written file is.
      const others = readdirSync(folder).filter((name) => name !== 'bell.diewright.json');
      for (const name of others)
        expect([name, readFileSync(join(folder, name), 'utf8')]).toEqual([
          'bell.previous.diewright.json',
          'before',
        ]);

      vi.mocked(files.open).mockImplementation(originals.get('open') as typeof files.open);
      vi.mocked(files.rename).mockImplementation(originals.get('rename') as typeof files.rename);
      expect((await places.save(path, 'after', false)).ok).toBe(true);
      expect(readFileSync(path, 'utf8')).toBe('after');
      expect(readFileSync(join(folder, 'bell.previous.diewright.json'), 'utf8')).toBe('before');
    },
  );
});

test('a folder that vanished with its drive is a question of where to save, and comes back with the drive', async () => {
  const folder = temporaryFolder();
  const drive = join(folder, 'drive');
  await files.mkdir(drive);
  const path = join(drive, 'bell.diewright.json');
  writeFileSync(path, 'before');
  const places = createJobPlaces();
  await places.open(path);
  await files.rename(drive, join(folder, 'unplugged'));
  expect(await places.save(path, 'after', false)).toMatchObject({
    ok: false,
    problem: { code: 'folder-missing' },
  });
  await files.rename(join(folder, 'unplugged'), drive);
  expect((await places.save(path, 'after', false)).ok).toBe(true);
  expect(readFileSync(path, 'utf8')).toBe('after');
});
