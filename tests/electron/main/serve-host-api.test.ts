import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { hostChannels } from '../../../electron/contract/channels';
import { serveHostApi } from '../../../electron/main/serve-host-api';
import { temporaryFolder } from '../../support/temporary-folder';
import { BrowserWindowStandIn, callFrom, shell } from '../support/electron-stand-in';

vi.mock('electron', async () => (await import('../support/electron-stand-in')).electronStandIn);

let startFile: string | null = null;
let window: BrowserWindowStandIn;

beforeAll(() => serveHostApi(() => startFile));
beforeEach(() => {
  vi.resetAllMocks();
  startFile = null;
  window = new BrowserWindowStandIn({ webPreferences: {} });
});

const saveRequest = { token: null, suggestedName: 'bell.diewright.json', text: '{}', replaceChanged: false };
const exportRequest = { folderName: 'bell', files: [{ name: 'bell.nc', text: '%' }] };

test('every channel of the contract is answered and no other', () => {
  expect([...shell.handlers.keys()].sort()).toEqual(Object.values(hostChannels).sort());
});

test.each(Object.values(hostChannels))('%s is refused to any other frame or address', (channel) => {
  const foreign = [
    null,
    { url: 'app://diewright/index.html' },
    Object.assign(window.webContents.mainFrame, { url: 'https://attacker.example/' }),
  ];
  for (const frame of foreign) expect(() => callFrom(window, channel, [{}], frame)).toThrow('Refused');
  window.webContents.mainFrame.url = 'app://diewright.attacker.example/index.html';
  expect(() => callFrom(window, channel, [{}])).toThrow('Refused');
  expect(shell.dialog.showOpenDialog).not.toHaveBeenCalled();
  expect(shell.dialog.showSaveDialog).not.toHaveBeenCalled();
});

test('arguments that are not the agreed form never reach a dialog or a disk', async () => {
  expect(await callFrom(window, hostChannels.saveJob, [{ path: '/etc/passwd', text: '' }])).toMatchObject({
    problem: { code: 'request-form' },
  });
  expect(await callFrom(window, hostChannels.exportFiles, ['all'])).toMatchObject({
    problem: { code: 'request-form' },
  });
  expect(() => callFrom(window, hostChannels.saveJob, [saveRequest, saveRequest])).toThrow('Refused');
  expect(shell.dialog.showSaveDialog).not.toHaveBeenCalled();
});

test('a chosen job may be saved back, a chosen drawing may not', async () => {
  const folder = temporaryFolder();
  const job = join(folder, 'bell.diewright.json');
  writeFileSync(job, '{"old": 1}');
  writeFileSync(join(folder, 'bell.dxf'), '0\nEOF\n');

  shell.dialog.showOpenDialog.mockResolvedValueOnce({
    canceled: false,
    filePaths: [join(folder, 'bell.dxf')],
  });
  expect(await callFrom(window, hostChannels.chooseFile)).toMatchObject({
    value: { name: 'bell.dxf', token: null },
  });

  shell.dialog.showOpenDialog.mockResolvedValueOnce({ canceled: false, filePaths: [job] });
  const opened = (await callFrom(window, hostChannels.chooseFile)) as { value: { token: string } };
  const token = opened.value.token;
  expect(
    await callFrom(window, hostChannels.saveJob, [{ ...saveRequest, token, text: '{"new": 1}' }]),
  ).toEqual({
    ok: true,
    value: { token, name: 'bell.diewright.json' },
  });
  expect(readFileSync(job, 'utf8')).toBe('{"new": 1}');
  expect(shell.dialog.showSaveDialog).not.toHaveBeenCalled();
});

test('cancelling is null everywhere', async () => {
  shell.dialog.showOpenDialog.mockResolvedValue({ canceled: true, filePaths: [] });
  shell.dialog.showSaveDialog.mockResolvedValue({ canceled: true, filePath: '' });
  expect(await callFrom(window, hostChannels.openedAtStart)).toBeNull();
  expect(await callFrom(window, hostChannels.chooseFile)).toBeNull();
  expect(await callFrom(window, hostChannels.saveJob, [saveRequest])).toBeNull();
  expect(await callFrom(window, hostChannels.exportFiles, [exportRequest])).toBeNull();
});

test('the window is told the file it was opened with', async () => {
  startFile = join(temporaryFolder(), 'none.dxf');
  expect(await callFrom(window, hostChannels.openedAtStart)).toMatchObject({
    problem: { code: 'file-missing' },
  });
});

test('a saved job gets its ending, and a file found under that name is asked about', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'bell.diewright.json'), 'old');
  shell.dialog.showSaveDialog.mockResolvedValue({ canceled: false, filePath: join(folder, 'bell') });
  shell.dialog.showMessageBox.mockResolvedValueOnce({ response: 0 });
  expect(await callFrom(window, hostChannels.saveJob, [saveRequest])).toBeNull();
  expect(readFileSync(join(folder, 'bell.diewright.json'), 'utf8')).toBe('old');

  shell.dialog.showMessageBox.mockResolvedValueOnce({ response: 1 });
  expect(await callFrom(window, hostChannels.saveJob, [saveRequest])).toMatchObject({ ok: true });
  expect(readFileSync(join(folder, 'bell.diewright.json'), 'utf8')).toBe('{}');
  expect(readdirSync(folder).sort()).toEqual(['bell.diewright.json', 'bell.previous.diewright.json']);
});

test('a token that was never given is refused', async () => {
  expect(
    await callFrom(window, hostChannels.saveJob, [{ ...saveRequest, token: '0'.repeat(32) }]),
  ).toMatchObject({ problem: { code: 'token-unknown' } });
});

test('export makes a folder of the job in the chosen one, and asks before it replaces files', async () => {
  const folder = temporaryFolder();
  shell.dialog.showOpenDialog.mockResolvedValue({ canceled: false, filePaths: [folder] });
  expect(await callFrom(window, hostChannels.exportFiles, [exportRequest])).toEqual({
    ok: true,
    value: { folder: join(folder, 'bell'), names: ['bell.nc'] },
  });
  expect(shell.dialog.showMessageBox).not.toHaveBeenCalled();

  shell.dialog.showMessageBox.mockResolvedValueOnce({ response: 0 });
  const again = { ...exportRequest, files: [{ name: 'bell.nc', text: 'newer' }] };
  expect(await callFrom(window, hostChannels.exportFiles, [again])).toBeNull();
  expect(readFileSync(join(folder, 'bell/bell.nc'), 'utf8')).toBe('%');
});

test('export cannot be led out of the chosen folder', async () => {
  const folder = temporaryFolder();
  shell.dialog.showOpenDialog.mockResolvedValue({ canceled: false, filePaths: [join(folder, 'chosen')] });
  const escaping = { folderName: '../../x', files: [{ name: '../y.nc', text: '%' }] };
  expect(await callFrom(window, hostChannels.exportFiles, [escaping])).toMatchObject({
    problem: { code: 'file-name' },
  });
  expect(existsSync(join(folder, 'chosen'))).toBe(false);
});

test('a technology table or a program style is saved where the user says, with its ending', async () => {
  const folder = temporaryFolder();
  const request = { kind: 'style', suggestedName: 'shop', text: '{}' };
  shell.dialog.showSaveDialog.mockResolvedValueOnce({ canceled: false, filePath: join(folder, 'shop.json') });
  expect(await callFrom(window, hostChannels.saveOwnFile, [request])).toEqual({
    ok: true,
    value: { name: 'shop.diewright-style.json' },
  });
  expect(readFileSync(join(folder, 'shop.diewright-style.json'), 'utf8')).toBe('{}');
  shell.dialog.showSaveDialog.mockResolvedValueOnce({ canceled: true, filePath: '' });
  expect(await callFrom(window, hostChannels.saveOwnFile, [{ ...request, kind: 'technology' }])).toBeNull();
  expect(await callFrom(window, hostChannels.saveOwnFile, [{ ...request, kind: 'job' }])).toMatchObject({
    problem: { code: 'request-form' },
  });
});
