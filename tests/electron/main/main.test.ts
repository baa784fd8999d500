import { EventEmitter } from 'node:events';
import { beforeAll, expect, test, vi } from 'vitest';
import { pagePolicy } from '../../../electron/services/page-policy';
import { shell } from '../support/electron-stand-in';

vi.mock('electron', async () => (await import('../support/electron-stand-in')).electronStandIn);

beforeAll(async () => {
  process.argv = ['/opt/Diewright/diewright', '--enable-logging', 'striker.dxf'];
  await import('../../../electron/main/main');
  await vi.waitFor(() => expect(shell.windows).toHaveLength(1));
});

test('the page has no Node, its own world and a sandbox', () => {
  expect(shell.windows[0]?.options.webPreferences).toMatchObject({
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    webSecurity: true,
  });
  expect(String(shell.windows[0]?.options.webPreferences['preload'])).toMatch(/preload\.cjs$/);
  expect(shell.app.enableSandbox).toHaveBeenCalled();
});

test('the page comes from its own scheme', () => {
  expect(shell.windows[0]?.loadURL).toHaveBeenCalledWith('app://diewright/index.html');
  expect(shell.protocol.registerSchemesAsPrivileged).toHaveBeenCalledWith([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
  expect(shell.protocol.handle.mock.calls[0]?.[0]).toBe('app');
});

test('other addresses, windows and web views are denied', () => {
  const contents = Object.assign(new EventEmitter(), { setWindowOpenHandler: vi.fn() });
  shell.app.emit('web-contents-created', {}, contents);
  const prevented = (name: string, url: string) => {
    const event = { url, preventDefault: vi.fn() };
    contents.emit(name, event);
    return event.preventDefault.mock.calls.length > 0;
  };
  for (const name of ['will-navigate', 'will-redirect']) {
    for (const url of [
      'https://example.org/',
      'file:///etc/passwd',
      'app://other/',
      'javascript:1',
      'not an address',
    ]) {
      expect(prevented(name, url)).toBe(true);
    }
    expect(prevented(name, 'app://diewright/index.html')).toBe(false);
  }
  expect(prevented('will-attach-webview', '')).toBe(true);
  expect(contents.setWindowOpenHandler.mock.calls[0]?.[0]()).toEqual({ action: 'deny' });
});

test('every permission is denied', () => {
  const { setPermissionRequestHandler, setPermissionCheckHandler, setDevicePermissionHandler } =
    shell.session.defaultSession;
  const answer = vi.fn();
  setPermissionRequestHandler.mock.calls[0]?.[0]({}, 'media', answer);
  expect(answer).toHaveBeenCalledWith(false);
  expect(setPermissionCheckHandler.mock.calls[0]?.[0]()).toBe(false);
  expect(setDevicePermissionHandler.mock.calls[0]?.[0]()).toBe(false);
});

test('no request leaves the page, whoever makes it', () => {
  const ask = shell.session.defaultSession.webRequest.onBeforeRequest.mock.calls[0]?.[0];
  const isCancelled = (url: string) => {
    const answer = vi.fn();
    ask({ url }, answer);
    return answer.mock.calls[0]?.[0].cancel;
  };
  for (const url of [
    'https://example.org/',
    'http://127.0.0.1:80/',
    'wss://example.org/',
    'file:///etc/passwd',
    'app://other/x',
  ])
    expect(isCancelled(url)).toBe(true);
  for (const url of ['app://diewright/index.html', 'blob:app://diewright/1', 'data:,x'])
    expect(isCancelled(url)).toBe(false);
});

test('unsaved changes keep the window open unless the user lets them go', () => {
  const leave = (choice: number) => {
    shell.dialog.showMessageBoxSync.mockReturnValueOnce(choice);
    const event = { preventDefault: vi.fn() };
    shell.windows[0]?.webContents.emit('will-prevent-unload', event);
    return event.preventDefault.mock.calls.length > 0;
  };
  expect(leave(0)).toBe(false);
  expect(leave(1)).toBe(true);
});

test('a file that the system hands over later gets a window of its own', () => {
  const event = { preventDefault: vi.fn() };
  shell.app.emit('open-file', event, '/drawings/bell.dxf');
  expect(event.preventDefault).toHaveBeenCalled();
  expect(shell.windows).toHaveLength(2);
});

test('the policy lets only the page itself run scripts', () => {
  expect(pagePolicy).toContain("default-src 'none'");
  expect(/script-src ([^;]*)/.exec(pagePolicy)?.[1]).toBe("'self'");
});
