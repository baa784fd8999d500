import { mkdir, stat } from 'node:fs/promises';
import { dirname } from 'node:path';

/**
 * Makes a folder and all that are missing above it; returns the topmost one made, undefined where it was there. As
 * `mkdir` with `recursive`, which never comes back where a folder is there that takes no folders (Linux, /proc).
 */
export async function makeFolder(path: string, mode?: number): Promise<string | undefined> {
  try {
    await mkdir(path, { mode });
    return path;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : null;
    if (code === 'EEXIST' && (await stat(path)).isDirectory()) return undefined;
    const parent = dirname(path);
    if (code !== 'ENOENT' || parent === path || (await isThere(parent))) throw error;
    const topmost = await makeFolder(parent, mode);
    await mkdir(path, { mode });
    return topmost ?? path;
  }
}

const isThere = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  );
