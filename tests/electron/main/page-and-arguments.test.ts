import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test, vi } from 'vitest';
import { fileArgument } from '../../../electron/main/file-argument';
import { isPageAddress } from '../../../electron/main/page-address';
import { pageResponse } from '../../../electron/main/serve-page';
import { setMenu } from '../../../electron/main/set-menu';
import { temporaryFolder } from '../../support/temporary-folder';
import { shell } from '../support/electron-stand-in';

vi.mock('electron', async () => (await import('../support/electron-stand-in')).electronStandIn);

test('only our own address is the page', () => {
  expect(isPageAddress('app://diewright/index.html')).toBe(true);
  for (const address of [
    'app://diewright.example/',
    'app://diewright:80/',
    'http://diewright/',
    'app:diewright',
    '',
  ]) {
    expect(isPageAddress(address)).toBe(false);
  }
});

test('the page is answered with its policy, anything else is not', async () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'window'));
  writeFileSync(join(folder, 'window/index.html'), '<title>Diewright</title>');
  writeFileSync(join(folder, 'secret.json'), '{}');
  const status = async (address: string, method = 'GET') =>
    (await pageResponse(new Request(address, { method }), join(folder, 'window'))).status;

  const page = await pageResponse(new Request('app://diewright/index.html'), join(folder, 'window'));
  expect(await page.text()).toBe('<title>Diewright</title>');
  expect(page.headers.get('content-security-policy')).toContain("default-src 'none'");
  expect(await status('app://diewright/none.js')).toBe(404);
  expect(await status('app://diewright/..%2fsecret.json')).toBe(404);
  expect(await status('app://other/index.html')).toBe(403);
  expect(await status('app://diewright/index.html', 'POST')).toBe(403);
});

test('the file on the command line is found among the switches', () => {
  expect(fileArgument(['diewright', '--flag', 'a.dxf'], true)).toBe(resolve('a.dxf'));
  expect(fileArgument(['electron', 'dist/electron/main.cjs', 'a.diewright.json'], false)).toBe(
    resolve('a.diewright.json'),
  );
  for (const name of ['a.SVG', 'a.csv', 'a.txt'])
    expect(fileArgument(['diewright', name], true)).toBe(resolve(name));
  expect(fileArgument(['electron', 'main.json'], false)).toBeNull();
  expect(fileArgument(['diewright', '--x=a.dxf'], true)).toBeNull();
});

test('the menu takes no undo key from the page', () => {
  setMenu('linux');
  expect(shell.Menu.setApplicationMenu).toHaveBeenLastCalledWith(null);
  setMenu('darwin');
  expect(JSON.stringify(shell.Menu.buildFromTemplate.mock.lastCall)).not.toContain('undo');
});
