import { app, session } from 'electron';
import { isPageAddress } from './page-address';

/** Denies what the page never needs: other addresses, other windows, web views and every permission. */
export function lockDown(): void {
  app.on('web-contents-created', (_event, contents) => {
    contents.on('will-navigate', (event) => {
      if (!isPageAddress(event.url)) event.preventDefault();
    });
    contents.on('will-redirect', (event) => {
      if (!isPageAddress(event.url)) event.preventDefault();
    });
    contents.on('will-attach-webview', (event) => event.preventDefault());
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  });
}

/** Nothing is asked of any network; the page itself has its own scheme. Has to be called when the shell is ready. */
export function denyNetwork(): void {
  session.defaultSession.webRequest.onBeforeRequest(({ url }, answer) => {
    answer({ cancel: !isPageAddress(url) && !/^(data|blob|devtools):/.test(url) });
  });
}

/** Has to be called when the shell is ready. */
export function denyPermissions(): void {
  session.defaultSession.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.defaultSession.setPermissionCheckHandler(() => false);
  session.defaultSession.setDevicePermissionHandler(() => false);
}
