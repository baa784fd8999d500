import { BrowserWindow, dialog } from 'electron';
import { pageAddress } from './page-address';

/** A window on our page, without Node in it. Leaving with unsaved changes is asked about, as the page demands it. */
export function createWindow(preloadFile: string): BrowserWindow {
  const window = new BrowserWindow({
    width: 1440,
    height: 900,
    minWidth: 720,
    minHeight: 480,
    title: 'Diewright',
    show: false,
    webPreferences: {
      preload: preloadFile,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webSecurity: true,
      spellcheck: false,
    },
  });
  window.once('ready-to-show', () => window.show());
  window.webContents.on('will-prevent-unload', (event) => {
    const choice = dialog.showMessageBoxSync(window, {
      type: 'question',
      message: 'The job has changes that are not saved.',
      buttons: ['Keep working', 'Leave without saving'],
      defaultId: 0,
      cancelId: 0,
    });
    // Preventing this event lets the page go.
    if (choice === 1) event.preventDefault();
  });
  void window.loadURL(pageAddress);
  return window;
}
