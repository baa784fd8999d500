import { accessSync, constants, readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * The binary of the desktop shell; null where it has not been fetched. The package is looked at and never required:
 * requiring it starts a download. ELECTRON_OVERRIDE_DIST_PATH names another folder, as the package itself has it.
 */
export function findElectron(
  packageFolder: string,
  environment: NodeJS.ProcessEnv = process.env,
): string | null {
  const override = environment['ELECTRON_OVERRIDE_DIST_PATH'];
  const name = binaryName(packageFolder) ?? (override ? 'electron' : null);
  if (name === null) return null;
  const path = join(override ?? join(packageFolder, 'dist'), name);
  try {
    accessSync(path, constants.X_OK);
    return path;
  } catch {
    return null;
  }
}

/** The package writes this file when it has unpacked its binary. */
function binaryName(packageFolder: string): string | null {
  try {
    return readFileSync(join(packageFolder, 'path.txt'), 'utf8').trim() || null;
  } catch {
    return null;
  }
}
