import { join } from 'node:path';
import { app, BrowserWindow } from 'electron';
import { createWindow } from './create-window';
import { fileArgument } from './file-argument';
import { denyNetwork, denyPermissions, lockDown } from './lock-down';
import { serveHostApi } from './serve-host-api';
import { registerPageScheme, servePage } from './serve-page';
import { setMenu } from './set-menu';

const startFiles = new WeakMap<BrowserWindow, string>();
let waitingFile = fileArgument(process.argv, app.isPackaged);

registerPageScheme();
lockDown();
app.enableSandbox();

// macOS hands over files by this event, before or after the shell is ready.
app.on('open-file', (event, path) => {
  event.preventDefault();
  waitingFile = path;
  if (app.isReady()) openWindow();
});
app.on('activate', () => {
  if (BrowserWindow.getAllWindows().length === 0) openWindow();
});
app.on('window-all-closed', () => app.quit());

void app.whenReady().then(() => {
  denyPermissions();
  denyNetwork();
  setMenu();
  servePage(join(__dirname, '../window'));
  serveHostApi((window) => startFiles.get(window) ?? null);
  openWindow();
});

function openWindow(): void {
  const window = createWindow(join(__dirname, 'preload.cjs'));
  if (waitingFile !== null) startFiles.set(window, waitingFile);
  waitingFile = null;
}
