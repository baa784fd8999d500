import { randomBytes } from 'node:crypto';
import { access, mkdir } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import { jobFileEnding } from '../../core/job';
import { done, failed, type Result } from '../../core/problem';
import type { ExportedFiles, SavedJob, SaveJobRequest } from '../contract/host-api';
import type { LocalWindowCall, LocalWindowReplies, WireFile } from '../contract/local-window-protocol';
import { createDraftCalls } from '../services/draft-calls';
import { createDrafts } from '../services/drafts';
import { cleanFileName } from '../services/file-name-trouble';
import { fileProblem } from '../services/file-problem';
import { exportRequest, saveJobRequest } from '../services/host-requests';
import { createJobPlaces, type JobPlaces } from '../services/job-places';
import { writeFilesTogether } from '../services/write-files-together';

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
    request.token === null ? await freePath(request.suggestedName, home) : places.pathOf(request.token);
  if (path === null) {
    return failed('token-unknown', 'The place to save to is not known', '', 'Save the job under a new name.');
  }
  try {
    if (request.token === null) await mkdir(home, { recursive: true });
  } catch (error) {
    return fileProblem(error, home, 'written');
  }
  return places.save(path, request.text, request.replaceChanged);
}

/** A name in the folder that no file has: a job saved for the first time never replaces another one. */
async function freePath(suggestedName: string, home: string): Promise<string> {
  const stem = cleanFileName(
    suggestedName.replace(new RegExp(`(${jobFileEnding}|\\.json)$`, 'i'), ''),
    'job',
  );
  for (let number = 1; ; number += 1) {
    const path = join(home, `${stem}${number === 1 ? '' : `-${number}`}${jobFileEnding}`);
    const taken = await access(path).then(
      () => true,
      () => false,
    );
    if (!taken) return path;
  }
}
