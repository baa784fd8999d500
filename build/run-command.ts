import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of package.json: scripts run from dist/scripts, tests use them where they stand. */
export const projectFolder = folderOfPackage(dirname(fileURLToPath(import.meta.url)));

function folderOfPackage(folder: string): string {
  if (existsSync(join(folder, 'package-lock.json'))) return folder;
  if (dirname(folder) === folder) throw new Error('package-lock.json is in no folder above this script');
  return folderOfPackage(dirname(folder));
}

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
