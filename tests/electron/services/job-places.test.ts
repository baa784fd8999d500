import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { createJobPlaces } from '../../../electron/services/job-places';
import { temporaryFolder } from '../../support/temporary-folder';

const jobAt = (folder: string, content: string): string => {
  const path = join(folder, 'bell.diewright.json');
  writeFileSync(path, content);
  return path;
};

const failure = vi.hoisted(() => ({ code: '' }));

test('keeps what a save replaces as the previous version, and nothing else beside it', async () => {
  const folder = temporaryFolder();
  const path = jobAt(folder, 'first');
  const places = createJobPlaces();
  await places.open(path);
  expect(await places.save(path, 'second', false)).toMatchObject({ ok: true });
  expect(await places.save(path, 'third', false)).toMatchObject({ ok: true });
  expect(readFileSync(path, 'utf8')).toBe('third');
  expect(readFileSync(join(folder, 'bell.previous.diewright.json'), 'utf8')).toBe('second');
  expect(readdirSync(folder)).toHaveLength(2);
});

test('a file that somebody else has changed stays until it is said to go, and is then kept as previous', async () => {
  const folder = temporaryFolder();
  const path = jobAt(folder, 'first');
  const places = createJobPlaces();
  await places.open(path);
  writeFileSync(path, 'theirs');
  expect(await places.save(path, 'mine', false)).toMatchObject({
    problem: { code: 'file-changed-elsewhere', where: path },
  });
  expect(readFileSync(path, 'utf8')).toBe('theirs');
  expect(await places.save(path, 'mine', true)).toMatchObject({ ok: true });
  expect(readFileSync(path, 'utf8')).toBe('mine');
  expect(readFileSync(join(folder, 'bell.previous.diewright.json'), 'utf8')).toBe('theirs');
});

test('a file that is gone is written anew; a folder that is gone is a problem with its place', async () => {
  const folder = temporaryFolder();
  const path = jobAt(folder, 'first');
  const places = createJobPlaces();
  await places.open(path);
  rmSync(path);
  expect(await places.save(path, 'again', false)).toMatchObject({ ok: true });
  expect(readFileSync(path, 'utf8')).toBe('again');
  rmSync(folder, { recursive: true });
  expect(await places.save(path, 'lost', false)).toMatchObject({
    problem: { code: 'folder-missing', where: path },
  });
});

// What a system says when the disk is full, can only be read, or has gone from the network (errno(3), POSIX.1-2017).
describe('a disk that fails in the middle of writing', () => {
  vi.mock('node:fs/promises', async (original) => {
    const real = await original<typeof import('node:fs/promises')>();
    return {
      ...real,
      open: async (...parameters: Parameters<typeof real.open>) => {
        const handle = await real.open(...parameters);
        if (failure.code !== '' && parameters[1] === 'wx') {
          const error = Object.assign(new Error(failure.code), { code: failure.code, syscall: 'write' });
          handle.writeFile = () => Promise.reject(error);
        }
        return handle;
      },
    };
  });

  test.each([
    ['ENOSPC', 'disk-full'],
    ['EROFS', 'file-denied'],
    ['ESTALE', 'disk-gone'],
    ['EIO', 'disk-gone'],
    ['ENOTCONN', 'disk-gone'],
  ])('%s: the file stays whole, and a sentence says what to do', async (code, problem) => {
    const folder = temporaryFolder();
    const path = jobAt(folder, 'first');
    const places = createJobPlaces();
    await places.open(path);
    failure.code = code;
    const saved = await places.save(path, 'second', false);
    failure.code = '';
    expect(saved).toMatchObject({ problem: { code: problem, where: path } });
    expect(readFileSync(path, 'utf8')).toBe('first');
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});
