import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** The folder of package.json. Scripts run from dist/scripts, two folders below it. */
export const projectFolder = fileURLToPath(new URL('../..', import.meta.url));

/** Runs a Node program with its output shown, in the project's folder or another; resolves to its exit code (1 where a signal ended it). */
export function runNode(args: readonly string[], folder = projectFolder): Promise<number> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...args], {
      cwd: folder,
      stdio: 'inherit',
    });
    child.once('error', reject);
    child.once('exit', (code) => resolve(code ?? 1));
  });
}
