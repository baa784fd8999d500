import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { join } from 'node:path';
import { findElectron } from './find-electron';
import { projectFolder, runNode } from './run-command';

/** Where no window can be opened, the address waits this long for somebody. */
const patience = ['--wait-minutes', '15'];

const electronPackage = join(projectFolder, 'node_modules/electron');

/** Opens the built window and resolves, when it is closed, to the exit code. `files` are opened in it. */
export async function openWindow(files: readonly string[], electron: string | null): Promise<number> {
  if (electron !== null) return runElectron(electron, files);
  return runNode(['dist/electron/local-window.cjs', ...patience, ...files]);
}

/** The desktop shell's binary, null where there is none. */
export const electronBinary = (): string | null => findElectron(electronPackage);

/** Tries to fetch the shell's binary once; a closed network is no error, the local window stands in. */
export async function fetchElectron(): Promise<string | null> {
  console.log('Fetching the desktop shell (about 110 MB, once) …');
  const done = await new Promise<boolean>((resolve) => {
    const child = spawn(process.execPath, [join(electronPackage, 'install.js')], {
      cwd: projectFolder,
      stdio: 'ignore',
      timeout: 10 * 60_000,
    });
    child.once('error', () => resolve(false));
    child.once('exit', (code) => resolve(code === 0));
  });
  if (!done)
    console.log('It cannot be fetched here: the window opens in the browser of this machine instead.');
  return done ? electronBinary() : null;
}

/**
 * Serves the window without opening it, in a process of its own that goes on when this one ends: it waits 15 minutes
 * for somebody to open the address, and once opened it stays until it is ended.
 */
export async function serveInBackground(
  files: readonly string[],
): Promise<{ readonly says: string; readonly pid: number }> {
  const child = spawn(
    process.execPath,
    [
      join(projectFolder, 'dist/electron/local-window.cjs'),
      '--address-only',
      '--wait-minutes',
      '15',
      ...files,
    ],
    { cwd: projectFolder, detached: true, stdio: ['ignore', 'pipe', 'ignore'] },
  );
  const says = await new Promise<string>((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (code) =>
      reject(new Error(`The local window ended with ${code} before it had an address`)),
    );
    createInterface({ input: child.stdout }).once('line', resolve);
  });
  child.removeAllListeners('exit');
  child.stdout.destroy();
  child.unref();
  return { says, pid: child.pid ?? 0 };
}

function runElectron(electron: string, files: readonly string[]): Promise<number> {
  // As root the shell only starts without its sandbox.
  const flags = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  return new Promise((resolve, reject) => {
    const child = spawn(electron, [...flags, join(projectFolder, 'dist/electron/main.cjs'), ...files], {
      cwd: projectFolder,
      stdio: 'inherit',
    });
    child.once('error', reject);
    child.once('exit', (code) => resolve(code ?? 1));
  });
}
