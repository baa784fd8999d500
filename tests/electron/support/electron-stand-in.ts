import { EventEmitter } from 'node:events';
import { vi } from 'vitest';

type Handler = (event: unknown, ...values: unknown[]) => unknown;

/**
 * Stands in for the electron package, which only loads inside the shell: remembers what the main process set up, so
 * that a test can look at it and call it. Use: `vi.mock('electron', async () => (await import(…)).electronStandIn)`.
 */
const handlers = new Map<string, Handler>();
const windows: BrowserWindowStandIn[] = [];

export class BrowserWindowStandIn extends EventEmitter {
  readonly webContents = Object.assign(new EventEmitter(), {
    mainFrame: { url: 'app://diewright/index.html' },
  });
  readonly loadURL = vi.fn(() => Promise.resolve());
  readonly show = vi.fn();
  readonly options: { readonly webPreferences: Readonly<Record<string, unknown>> };
  constructor(options: BrowserWindowStandIn['options']) {
    super();
    this.options = options;
    windows.push(this);
  }
  static fromWebContents(contents: unknown) {
    return windows.find((window) => window.webContents === contents) ?? null;
  }
  static getAllWindows() {
    return windows;
  }
}

const appEvents = Object.assign(new EventEmitter(), {
  isPackaged: true,
  isReady: () => true,
  whenReady: () => Promise.resolve(),
  enableSandbox: vi.fn(),
  quit: vi.fn(),
});

export const electronStandIn = {
  app: appEvents,
  BrowserWindow: BrowserWindowStandIn,
  ipcMain: { handle: (channel: string, handler: Handler) => handlers.set(channel, handler) },
  protocol: { registerSchemesAsPrivileged: vi.fn(), handle: vi.fn() },
  session: {
    defaultSession: {
      setPermissionRequestHandler: vi.fn(),
      setPermissionCheckHandler: vi.fn(),
      setDevicePermissionHandler: vi.fn(),
      webRequest: { onBeforeRequest: vi.fn() },
    },
  },
  dialog: {
    showOpenDialog: vi.fn(),
    showSaveDialog: vi.fn(),
    showMessageBox: vi.fn(),
    showMessageBoxSync: vi.fn(),
  },
  Menu: { setApplicationMenu: vi.fn(), buildFromTemplate: vi.fn((template: unknown) => ({ template })) },
};

export const shell = { handlers, windows, ...electronStandIn };

/** Calls a channel as the page in `window` would; `frame` stands for another frame or address. */
export function callFrom(
  window: BrowserWindowStandIn,
  channel: string,
  values: readonly unknown[] = [],
  frame: unknown = window.webContents.mainFrame,
): unknown {
  const handler = handlers.get(channel);
  if (!handler) throw new Error(`Nothing answers ${channel}`);
  return handler({ sender: window.webContents, senderFrame: frame }, ...values);
}
