import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** The folder of package.json. Scripts run from dist/scripts, two folders below it. */
export const projectFolder = fileURLToPath(new URL('../..', import.meta.url));

/** Runs a Node program of this project with its output shown; resolves to its exit code (1 where a signal ended it). */
export function runNode(args: readonly string[], environment: NodeJS.ProcessEnv = {}): Promise<number> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...args], {
      cwd: projectFolder,
      stdio: 'inherit',
      env: { ...process.env, ...environment },
    });
    child.once('error', reject);
    child.once('exit', (code) => resolve(code ?? 1));
  });
}
