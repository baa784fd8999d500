import { randomBytes } from 'node:crypto';
import { basename, join, resolve } from 'node:path';
import { done, failed, type Result } from '../../core/problem';
import type { ExportedFiles, SavedJob, SaveJobRequest, SaveOwnFileRequest } from '../contract/host-api';
import type { LocalWindowCall, LocalWindowReplies, WireFile } from '../contract/local-window-protocol';
import { createDraftCalls } from '../services/draft-calls';
import { createDrafts } from '../services/drafts';
import { cleanFileName } from '../services/file-name-trouble';
import { fileProblem } from '../services/file-problem';
import { exportRequest, saveJobRequest, saveOwnFileRequest } from '../services/host-requests';
import { createJobPlaces, type JobPlaces } from '../services/job-places';
import { makeFolder } from '../services/make-folder';
import { ownFiles } from '../services/own-files';
import { saveAtomically } from '../services/save-atomically';
import { writeFilesTogether } from '../services/write-files-together';
import { freePath } from './free-path';

export type HostCalls = {
  readonly [Call in LocalWindowCall]: (request: unknown) => Promise<LocalWindowReplies[Call]>;
};

/**
 * The host interface of the local window. There is no dialog to ask for a place: new files go into the out folder,
 * under names that cannot lead out of it; only the job the program was started with goes back to where it came from.
 */
export function createHostCalls(outFolder: string, openPath: string | null, draftFolder: string): HostCalls {
  const places = createJobPlaces();
  const drafts = createDraftCalls(createDrafts(draftFolder), places);
  const session = randomBytes(16).toString('hex');
  const home = resolve(outFolder);
  return {
    openedAtStart: async () => (openPath === null ? null : wireFile(resolve(openPath), places)),
    saveJob: async (value) => {
      const request = saveJobRequest(value);
      return request.ok ? saveJob(request.value, home, places) : request;
    },
    saveOwnFile: async (value) => {
      const request = saveOwnFileRequest(value);
      return request.ok ? saveOwnFile(request.value, home) : request;
    },
    keepDraft: (value) => drafts.keepDraft(session, value),
    leftOver: () => drafts.leftOver(),
    dropDraft: (value) => drafts.dropDraft(value),
    exportFiles: async (value): Promise<Result<ExportedFiles>> => {
      const request = exportRequest(value);
      if (!request.ok) return request;
      const folder = join(home, cleanFileName(request.value.folderName, 'job'));
      const written = await writeFilesTogether(folder, request.value.files);
      return written.ok ? done({ folder, names: written.value.map((path) => basename(path)) }) : written;
    },
  };
}

async function wireFile(path: string, places: JobPlaces): Promise<Result<WireFile>> {
  const opened = await places.open(path);
  if (!opened.ok) return opened;
  const { bytes, ...rest } = opened.value;
  return done({ ...rest, bytesBase64: Buffer.from(bytes).toString('base64') });
}

async function saveJob(request: SaveJobRequest, home: string, places: JobPlaces): Promise<Result<SavedJob>> {
  const path =
    request.token === null
      ? await freePath(request.suggestedName, home, ownFiles.job)
      : places.pathOf(request.token);
  if (path === null) {
    return failed('token-unknown', 'The place to save to is not known', '', 'Save the job under a new name.');
  }
  const made = request.token === null ? await madeFolder(home) : done(null);
  if (!made.ok) return made;
  return places.save(path, request.text, request.replaceChanged);
}

async function saveOwnFile(
  { kind, suggestedName, text }: SaveOwnFileRequest,
  home: string,
): Promise<Result<{ name: string }>> {
  const path = await freePath(suggestedName, home, ownFiles[kind]);
  const made = await madeFolder(home);
  if (!made.ok) return made;
  const saved = await saveAtomically(path, text);
  return saved.ok ? done({ name: basename(path) }) : saved;
}

async function madeFolder(path: string): Promise<Result<null>> {
  try {
    await makeFolder(path);
    return done(null);
  } catch (error) {
    return fileProblem(error, path, 'written');
  }
}
