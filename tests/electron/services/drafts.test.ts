import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { createDrafts } from '../../../electron/services/drafts';
import { temporaryFolder } from '../../support/temporary-folder';

const session = '0123456789abcdef';
const request = { name: 'bell', job: '{"n":1}', drawing: '0\nEOF\n', token: null };
const place = { path: '/somewhere/bell.diewright.json', hash: 'abc' };

/** A draft as a program that has ended left it. */
async function leftBehind(folder: string): Promise<void> {
  await createDrafts(folder, () => 0).keep(session, request, place);
  const path = join(folder, `${session}.draft`);
  const ended = spawnSync(process.execPath, ['-e', '']).pid;
  writeFileSync(path, readFileSync(path, 'utf8').replace(`"process":${process.pid}`, `"process":${ended}`));
}

test('a draft of a program that has ended is left over, whole', async () => {
  const folder = temporaryFolder();
  await leftBehind(folder);
  expect(await createDrafts(folder).leftOver()).toEqual({
    ok: true,
    value: [
      {
        ...{ id: session, name: 'bell', keptAt: '1970-01-01T00:00:00.000Z' },
        ...{ job: '{"n":1}', drawing: '0\nEOF\n', place },
      },
    ],
  });
});

test('a draft of a window that is still there is not', async () => {
  const folder = temporaryFolder();
  await createDrafts(folder).keep(session, request, null);
  expect(await createDrafts(folder).leftOver()).toEqual({ ok: true, value: [] });
});

test('an edit without a new drawing keeps the drawing; no unsaved work drops both', async () => {
  const folder = temporaryFolder();
  const drafts = createDrafts(folder);
  await drafts.keep(session, request, null);
  await drafts.keep(session, { ...request, job: '{"n":2}', drawing: null }, null);
  expect(readFileSync(join(folder, `${session}.drawing`), 'utf8')).toBe('0\nEOF\n');
  expect(readFileSync(join(folder, `${session}.draft`), 'utf8')).toContain('{\\"n\\":2}');
  await drafts.keep(session, { ...request, job: null, drawing: null }, null);
  expect(readdirSync(folder)).toEqual([]);
});

test('what does not belong together, is damaged, or is not ours is no draft', async () => {
  const folder = temporaryFolder();
  await leftBehind(folder);
  writeFileSync(join(folder, `${session}.drawing`), 'another drawing');
  writeFileSync(join(folder, 'aa.draft'), '{"format":"diewri');
  writeFileSync(join(folder, 'bb.draft'), '{"format":"something-else"}');
  expect(await createDrafts(folder).leftOver()).toEqual({ ok: true, value: [] });
});

test('a folder that was never made has no drafts', async () => {
  expect(await createDrafts(join(temporaryFolder(), 'none')).leftOver()).toEqual({ ok: true, value: [] });
});
