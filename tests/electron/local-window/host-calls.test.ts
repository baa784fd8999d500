import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { createHostCalls } from '../../../electron/local-window/host-calls';
import { temporaryFolder } from '../../support/temporary-folder';

const callsInto = (folder: string, openPath: string | null = null) =>
  createHostCalls(join(folder, 'out'), openPath, join(folder, 'drafts'));

test('without a file to start with there is none', async () => {
  expect(await callsInto(temporaryFolder()).openedAtStart({})).toBeNull();
});

test('a drawing is handed over byte by byte and may not be written back', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'bell.dxf'), Buffer.from([0x30, 0xe4, 0x00, 0xff]));
  expect(await callsInto(folder, join(folder, 'bell.dxf')).openedAtStart({})).toEqual({
    ok: true,
    // RFC 4648 base64 of 30 e4 00 ff.
    value: { name: 'bell.dxf', bytesBase64: 'MOQA/w==', token: null },
  });
});

test('a job is saved back to where it came from', async () => {
  const folder = temporaryFolder();
  const path = join(folder, 'bell.diewright.json');
  writeFileSync(path, '{"old": 1}');
  const calls = callsInto(folder, path);
  const opened = await calls.openedAtStart({});
  const token = opened?.ok ? opened.value.token : null;
  expect(token).not.toBeNull();
  const saved = await calls.saveJob({
    token,
    suggestedName: 'ignored',
    text: '{"new": 1}',
    replaceChanged: false,
  });
  expect(saved).toEqual({ ok: true, value: { token, name: 'bell.diewright.json' } });
  expect(readFileSync(path, 'utf8')).toBe('{"new": 1}');
});

test('a job without a place goes into the out folder and never over another one', async () => {
  const folder = temporaryFolder();
  const calls = callsInto(folder);
  const first = await calls.saveJob({
    token: null,
    suggestedName: 'bell.diewright.json',
    text: '1',
    replaceChanged: false,
  });
  const second = await calls.saveJob({
    token: null,
    suggestedName: 'bell',
    text: '2',
    replaceChanged: false,
  });
  expect(first).toMatchObject({ value: { name: 'bell.diewright.json' } });
  expect(second).toMatchObject({ value: { name: 'bell-2.diewright.json' } });
  const token = second?.ok ? second.value.token : null;
  await calls.saveJob({ token, suggestedName: 'bell', text: '3', replaceChanged: false });
  expect(readFileSync(join(folder, 'out/bell.diewright.json'), 'utf8')).toBe('1');
  expect(readFileSync(join(folder, 'out/bell-2.diewright.json'), 'utf8')).toBe('3');
});

test.each(['../../bell', '/etc/bell', '..', 'a/../../b', 'C:\\bell'])(
  'the job name %j does not lead out of the folder',
  async (suggestedName) => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'deep'));
    const calls = createHostCalls(join(folder, 'deep/out'), null, join(folder, 'drafts'));
    expect(
      await calls.saveJob({ token: null, suggestedName, text: '1', replaceChanged: false }),
    ).toMatchObject({ ok: true });
    expect(
      await calls.exportFiles({ folderName: suggestedName, files: [{ name: 'a.nc', text: '%' }] }),
    ).toMatchObject({ ok: true });
    expect(readdirSync(folder)).toEqual(['deep']);
    expect(readdirSync(join(folder, 'deep'))).toEqual(['out']);
    expect(readdirSync(join(folder, 'deep/out'))).toHaveLength(2);
  },
);

test('a token that was never given is refused', async () => {
  const folder = temporaryFolder();
  const saved = await callsInto(folder).saveJob({
    token: 'f'.repeat(32),
    suggestedName: 'x',
    text: '1',
    replaceChanged: false,
  });
  expect(saved).toMatchObject({ ok: false, problem: { code: 'token-unknown' } });
  expect(existsSync(join(folder, 'out'))).toBe(false);
});

test('export writes all files into a folder of the job, and none when one may not be', async () => {
  const folder = temporaryFolder();
  const calls = callsInto(folder);
  const files = [
    { name: 'bell-die.nc', text: '%\nM02\n%' },
    { name: 'bell.dxf', text: '0\nEOF\n' },
  ];
  expect(await calls.exportFiles({ folderName: 'bell', files })).toEqual({
    ok: true,
    value: { folder: join(folder, 'out/bell'), names: ['bell-die.nc', 'bell.dxf'] },
  });
  const bad = [...files, { name: '../escaped.nc', text: '%' }];
  expect(await calls.exportFiles({ folderName: 'other', files: bad })).toMatchObject({
    problem: { code: 'file-name' },
  });
  expect(readdirSync(join(folder, 'out'))).toEqual(['bell']);
});

test('tables and styles get their own endings and replace nothing', async () => {
  const folder = temporaryFolder();
  const calls = callsInto(folder);
  const save = (kind: string, suggestedName: string) =>
    calls.saveOwnFile({ kind, suggestedName, text: `${kind} ${suggestedName}` });
  expect(await save('technology', 'shop')).toEqual({
    ok: true,
    value: { name: 'shop.diewright-technology.json' },
  });
  expect(await save('technology', 'shop.diewright-technology.json')).toMatchObject({
    value: { name: 'shop-2.diewright-technology.json' },
  });
  expect(await save('style', '../shop.diewright-style.json')).toMatchObject({ ok: true });
  expect(await save('style', '')).toMatchObject({ value: { name: 'style.diewright-style.json' } });
  expect(await save('job', 'x')).toMatchObject({ problem: { code: 'request-form' } });
  expect(readdirSync(folder)).toEqual(['out']);
  expect(readdirSync(join(folder, 'out'))).toHaveLength(4);
});
