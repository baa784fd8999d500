import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { jobFileEnding } from '../../core/job';
import { done, failed, type Result } from '../../core/problem';
import type { HostFile, SavedJob } from '../contract/host-api';
import { fileProblem } from './file-problem';
import { keepPrevious } from './keep-previous';
import { openFile } from './open-file';
import { createPathTokens, type PathTokens } from './path-tokens';
import { saveAtomically } from './save-atomically';

/** The job files that the page has opened or saved: where they are, and what was in them then. */
export interface JobPlaces extends PathTokens {
  /** Hash of what was in the file when it was last opened or saved here; null where it never was. */
  hashAt(path: string): string | null;
  remember(path: string, hash: string | null): void;
  /** Opens a file for the page. Only a job may be written back to its place: a customer's drawing gets no token. */
  open(path: string): Promise<Result<HostFile>>;
  /**
   * Saves a job, keeping what it replaces beside it. A file that somebody else has changed since it was opened or
   * saved here stays as it is, unless it is to be replaced.
   */
  save(path: string, text: string, replaceChanged: boolean): Promise<Result<SavedJob>>;
}

export function createJobPlaces(): JobPlaces {
  const tokens = createPathTokens();
  const known = new Map<string, string>();

  const isChanged = async (path: string): Promise<boolean> => {
    const hash = known.get(path);
    if (hash === undefined) return false;
    const now = await readFile(path).catch((error: unknown) => {
      // A file that is gone is no one's work: it is written anew.
      if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
      throw error;
    });
    return now !== null && hashOf(now) !== hash;
  };

  return {
    ...tokens,
    hashAt: (path) => known.get(path) ?? null,
    remember: (path, hash) => void (hash === null ? known.delete(path) : known.set(path, hash)),
    open: async (path) => {
      const opened = await openFile(path);
      if (!opened.ok) return opened;
      const isJob = path.toLowerCase().endsWith(jobFileEnding);
      if (isJob) known.set(path, hashOf(opened.value.bytes));
      return done({ ...opened.value, token: isJob ? tokens.tokenFor(path) : null });
    },
    save: async (path, text, replaceChanged) => {
      try {
        if (!replaceChanged && (await isChanged(path))) return changedElsewhere(path);
        await keepPrevious(path);
      } catch (error) {
        return fileProblem(error, path, 'written');
      }
      const saved = await saveAtomically(path, text);
      if (!saved.ok) return saved;
      known.set(path, hashOf(text));
      return done({ token: tokens.tokenFor(path), name: basename(path) });
    },
  };
}

const hashOf = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex');

const changedElsewhere = (path: string): ReturnType<typeof failed> =>
  failed(
    'file-changed-elsewhere',
    'Somebody else has changed the job file since it was opened here',
    path,
    'Save under another name, or replace it; what is replaced is kept beside it as the previous version.',
  );
