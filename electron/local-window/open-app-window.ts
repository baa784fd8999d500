import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * Opens the address as a window of its own, without tabs and address bar, in a browser profile made for it alone;
 * resolves when the window has been closed. Root may only run the browser without its sandbox.
 */
export async function openAppWindow(browser: string, address: string): Promise<void> {
  const profile = await mkdtemp(join(tmpdir(), 'diewright-window-'));
  const flags = [
    `--app=${address}`,
    `--user-data-dir=${profile}`,
    '--no-first-run',
    '--no-default-browser-check',
  ];
  if (process.getuid?.() === 0) flags.push('--no-sandbox', '--test-type');
  let ended: NodeJS.Signals | null = null;
  try {
    await new Promise<void>((resolve) => {
      const child = spawn(browser, flags, { stdio: 'ignore' });
      const end = (signal: NodeJS.Signals) => {
        ended = signal;
        child.kill();
      };
      const settle = () => {
        process.off('SIGINT', end).off('SIGTERM', end);
        resolve();
      };
      process.on('SIGINT', end).on('SIGTERM', end);
      // A browser that does not start leaves the window unopened, which the caller sees by its token.
      child.once('error', settle).once('exit', settle);
    });
  } finally {
    await rm(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
  // Ended from outside: with the browser and its profile gone, this program goes the same way.
  if (ended !== null) process.kill(process.pid, ended);
}

/** Whether there is a screen to open a window on. */
export function hasDisplay(
  environment: NodeJS.ProcessEnv = process.env,
  platform = process.platform,
): boolean {
  if (platform === 'win32' || platform === 'darwin') return true;
  return Boolean(environment['DISPLAY'] || environment['WAYLAND_DISPLAY']);
}
