import { createHash } from 'node:crypto';
import { readdir, readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { done, type Result } from '../../core/problem';
import type { KeepDraftRequest, KeptDraft } from '../contract/host-api';
import { fileProblem } from './file-problem';
import { makeFolder } from './make-folder';
import { saveAtomically } from './save-atomically';

/** Unsaved work, kept outside the user's folders until it is saved: one draft a window. */
export interface Drafts {
  /** Keeps the window's draft, or drops it where there is nothing unsaved any more. */
  keep(session: string, request: KeepDraftRequest, place: SavedPlace | null): Promise<Result<null>>;
  /** Drafts of windows that are no longer there, newest first. */
  leftOver(): Promise<Result<readonly LeftDraft[]>>;
  drop(session: string): Promise<Result<null>>;
}

/** Where a job was opened from or saved to, and the hash of what was there then. */
export type SavedPlace = z.infer<typeof placeSchema>;

export interface LeftDraft extends Omit<KeptDraft, 'token'> {
  /** Null where the job was never saved. */
  readonly place: SavedPlace | null;
}

const placeSchema = z.strictObject({ path: z.string(), hash: z.string().nullable() });

const draftSchema = z.strictObject({
  format: z.literal('diewright-draft'),
  version: z.literal(1),
  process: z.int(),
  name: z.string(),
  place: placeSchema.nullable(),
  keptAt: z.string(),
  drawingHash: z.string(),
  job: z.string(),
});

/**
 * Drafts in a folder of the program's own. The drawing, which is large and does not change, lies in a file of its own,
 * so that an edit writes a few kilobytes. `now` gives the time to the drafts, in milliseconds since 1970.
 */
export function createDrafts(folder: string, now: () => number = Date.now): Drafts {
  const drawingHashes = new Map<string, string>();
  const pathOf = (session: string, what: 'draft' | 'drawing'): string => join(folder, `${session}.${what}`);

  const drop = async (session: string): Promise<Result<null>> => {
    try {
      await rm(pathOf(session, 'draft'), { force: true });
      await rm(pathOf(session, 'drawing'), { force: true });
      drawingHashes.delete(session);
      return done(null);
    } catch (error) {
      return fileProblem(error, folder, 'written');
    }
  };

  const keep: Drafts['keep'] = async (session, { name, job, drawing }, place) => {
    if (job === null) return drop(session);
    try {
      await makeFolder(folder, 0o700);
    } catch (error) {
      return fileProblem(error, folder, 'written');
    }
    if (drawing !== null) {
      const saved = await saveAtomically(pathOf(session, 'drawing'), drawing);
      if (!saved.ok) return saved;
      drawingHashes.set(session, hashOf(drawing));
    }
    const drawingHash = drawingHashes.get(session) ?? '';
    const draft: z.infer<typeof draftSchema> = {
      ...{ format: 'diewright-draft', version: 1, process: process.pid, name, place },
      ...{ keptAt: new Date(now()).toISOString(), drawingHash, job },
    };
    return saveAtomically(pathOf(session, 'draft'), JSON.stringify(draft));
  };

  const leftOver: Drafts['leftOver'] = async () => {
    try {
      const found: LeftDraft[] = [];
      for (const file of await readdir(folder).catch(noFolder)) {
        if (!file.endsWith('.draft')) continue;
        const session = file.slice(0, -'.draft'.length);
        const draft = await readDraft(pathOf(session, 'draft'), pathOf(session, 'drawing'));
        if (draft) found.push({ id: session, ...draft });
      }
      return done(found.sort((a, b) => b.keptAt.localeCompare(a.keptAt)));
    } catch (error) {
      return fileProblem(error, folder, 'read');
    }
  };

  return { keep, leftOver, drop };
}

/** Null where the window is still there, or the files do not belong together (the program ended between the two). */
async function readDraft(path: string, drawingPath: string): Promise<Omit<LeftDraft, 'id'> | null> {
  const parsed = draftSchema.safeParse(parsedJson(await readFile(path, 'utf8')));
  if (!parsed.success || isRunning(parsed.data.process)) return null;
  const { name, place, keptAt, drawingHash, job } = parsed.data;
  const drawing = await readFile(drawingPath, 'utf8').catch(() => '');
  if (hashOf(drawing) !== drawingHash) return null;
  return { name, place, keptAt, job, drawing };
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex');

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function noFolder(error: unknown): string[] {
  if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return [];
  throw error;
}
