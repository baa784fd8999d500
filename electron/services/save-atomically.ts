import { randomBytes } from 'node:crypto';
import { access, constants, open, realpath, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { done, type Result } from '../../core/problem';
import { fileProblem } from './file-problem';

/**
 * Writes a file so that at every moment either the old or the new one is there whole: into a temporary file of the
 * same folder, to the disk, then renamed. An existing file keeps its permissions, and a link keeps pointing to its
 * file. A file that may not be written stays as it is, although its folder would let it be replaced.
 */
export async function saveAtomically(path: string, content: string | Uint8Array): Promise<Result<null>> {
  try {
    const target = await linkTarget(path);
    const temporary = await writeTemporary(target, content);
    try {
      await rename(temporary, target);
    } catch (error) {
      await rm(temporary, { force: true });
      throw error;
    }
    await flushFolder(dirname(target));
    return done(null);
  } catch (error) {
    return fileProblem(error, path, 'written');
  }
}

/** Writes the content, flushed to the disk, under a name of its own beside `target`, and returns that name. */
export async function writeTemporary(target: string, content: string | Uint8Array): Promise<string> {
  const mode = await modeOfWritable(target);
  const temporary = besideName(target, 'part');
  const handle = await open(temporary, 'wx', mode ?? 0o666);
  try {
    await handle.writeFile(content);
    // The process's mask may have taken rights away that the old file had.
    if (mode !== null) await handle.chmod(mode);
    await handle.sync();
  } catch (error) {
    await handle.close();
    await rm(temporary, { force: true });
    throw error;
  }
  await handle.close();
  return temporary;
}

/** A hidden name beside `target` that no other file has. */
export function besideName(target: string, ending: string): string {
  return join(
    dirname(target),
    `.${basename(target).slice(0, 200)}.${randomBytes(6).toString('hex')}.${ending}`,
  );
}

/** Makes renames last through a power cut. Windows has no such call and needs none. */
export async function flushFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** The file a link leads to, so that saving changes the file and keeps the link. */
export async function linkTarget(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch {
    // Not there yet: it will be made where it was asked for, and a missing folder shows when writing.
    return path;
  }
}

async function modeOfWritable(target: string): Promise<number | null> {
  try {
    const { mode } = await stat(target);
    await access(target, constants.W_OK);
    return mode & 0o777;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
}
