import { copyFile, rename, rm, rmdir, stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { supersededName } from '../../core/output/output-files';
import { done, failed, type Result } from '../../core/problem';
import { fileNameTrouble } from './file-name-trouble';
import { fileProblem } from './file-problem';
import { makeFolder } from './make-folder';
import { besideName, flushFolder, linkTarget, writeTemporary } from './save-atomically';

export interface FileToWrite {
  /** Without a folder. */
  readonly name: string;
  readonly text: string;
  /** The text is bytes, one character each. */
  readonly isBytes?: boolean | undefined;
}

interface Step {
  readonly target: string;
  readonly temporary: string;
  /** A copy of the file that was there; null where there was none. */
  backup: string | null;
  renamed: boolean;
}

/**
 * Writes all files into the folder or none: first every file whole under a temporary name, then all are renamed. When
 * a rename fails, those made before are taken back, so that the folder is as it was; a folder made for the files goes
 * again. Once they stand, what an earlier export left under the other mark (draft or released) is removed. Returns the
 * paths written.
 */
export async function writeFilesTogether(
  folder: string,
  files: readonly FileToWrite[],
): Promise<Result<readonly string[]>> {
  for (const { name } of files) {
    const trouble = fileNameTrouble(name);
    if (trouble) return failed('file-name', trouble, name, 'Choose another name for the job.');
  }
  const twice = files.find(({ name }, at) =>
    files.slice(0, at).some((other) => other.name.toLowerCase() === name.toLowerCase()),
  );
  if (twice) {
    return failed('file-name', 'Two files would have the same name', twice.name, 'Choose other names.');
  }

  const home = resolve(folder);
  const steps: Step[] = [];
  let firstMade: string | undefined;
  let at = home;
  try {
    firstMade = await makeFolder(home);
    for (const { name, text, isBytes } of files) {
      at = join(home, name);
      const target = await plainTarget(at);
      steps.push({
        target,
        temporary: await writeTemporary(target, isBytes ? Buffer.from(text, 'latin1') : text),
        backup: null,
        renamed: false,
      });
    }
    for (const step of steps) {
      at = step.target;
      step.backup = await backupOf(step.target);
      await rename(step.temporary, step.target);
      step.renamed = true;
    }
    at = home;
    await flushFolder(home);
  } catch (error) {
    await takeBack(steps);
    if (firstMade !== undefined) await removeEmptyFolders(home, firstMade);
    return fileProblem(error, at, 'written');
  }
  for (const { backup } of steps) if (backup) await rm(backup, { force: true });
  const left = await removeSuperseded(home, files);
  if (left) return left;
  return done(steps.map(({ target }) => target));
}

async function removeSuperseded(home: string, files: readonly FileToWrite[]): Promise<Result<never> | null> {
  for (const { name } of files) {
    const old = supersededName(name);
    if (old === null) continue;
    try {
      await rm(join(home, old), { force: true });
    } catch {
      return failed(
        'file-superseded',
        'The files are written, but an outdated one beside them could not be removed',
        join(home, old),
        'Remove it by hand, so that nobody cuts from it.',
      );
    }
  }
  return null;
}

/** Where a link leads; refuses a folder of the wanted name before anything is written, as the system would later. */
async function plainTarget(target: string): Promise<string> {
  const isFolder = await stat(target).then(
    (found) => found.isDirectory(),
    () => false,
  );
  if (isFolder) throw Object.assign(new Error('is a folder'), { code: 'EISDIR', syscall: 'rename' });
  return linkTarget(target);
}

async function backupOf(target: string): Promise<string | null> {
  const backup = besideName(target, 'old');
  try {
    await copyFile(target, backup);
    return backup;
  } catch (error) {
    await rm(backup, { force: true });
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
}

async function takeBack(steps: readonly Step[]): Promise<void> {
  for (const step of [...steps].reverse()) {
    if (step.renamed && step.backup) await rename(step.backup, step.target);
    else if (step.renamed) await rm(step.target, { force: true });
    else if (step.backup) await rm(step.backup, { force: true });
    if (!step.renamed) await rm(step.temporary, { force: true });
  }
}

async function removeEmptyFolders(folder: string, firstMade: string): Promise<void> {
  for (let path = folder; path.length >= firstMade.length; path = dirname(path)) {
    try {
      await rmdir(path);
    } catch {
      // Somebody else has put something there meanwhile: it stays.
      return;
    }
  }
}
