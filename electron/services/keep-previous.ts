import { copyFile, link, rename, rm } from 'node:fs/promises';
import { jobFileEnding } from '../../core/job';
import { besideName, linkTarget } from './save-atomically';

/** Keeps what a file holds now beside it as the previous version, whole at every moment; nothing where there is no file. */
export async function keepPrevious(path: string): Promise<void> {
  const target = await linkTarget(path);
  const temporary = besideName(target, 'part');
  try {
    // A second name costs no room and cannot be half written; some disks have no such thing.
    await link(target, temporary).catch(() => copyFile(target, temporary));
    await rename(temporary, previousName(target));
  } catch (error) {
    await rm(temporary, { force: true });
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return;
    throw error;
  }
}

/** `bell.diewright.json` → `bell.previous.diewright.json`, which opens like any other job. */
export function previousName(path: string): string {
  const hasEnding = path.toLowerCase().endsWith(jobFileEnding);
  const stem = hasEnding ? path.slice(0, -jobFileEnding.length) : path;
  return `${stem}.previous${hasEnding ? path.slice(-jobFileEnding.length) : ''}`;
}
