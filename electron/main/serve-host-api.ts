import { randomBytes } from 'node:crypto';
import { basename, join } from 'node:path';
import { BrowserWindow, ipcMain, type IpcMainInvokeEvent } from 'electron';
import { done, failed } from '../../core/problem';
import { hostChannels, type HostChannel } from '../contract/channels';
import type { ExportedFiles, HostFile, HostReply, KeptDraft, SavedJob } from '../contract/host-api';
import { createDraftCalls } from '../services/draft-calls';
import { createDrafts } from '../services/drafts';
import { exportRequest, saveJobRequest, saveOwnFileRequest } from '../services/host-requests';
import { createJobPlaces } from '../services/job-places';
import { ownFiles } from '../services/own-files';
import { saveAtomically } from '../services/save-atomically';
import { stateFolder } from '../services/state-folder';
import { writeFilesTogether } from '../services/write-files-together';
import { askForExportFolder, askForFile, askForOwnPlace } from './ask-for-place';
import { isPageAddress } from './page-address';

type Reply<T> = Promise<HostReply<T> | null>;

/**
 * Answers the page's calls. One gate for all of them: only the top frame of a window of ours that shows our page is
 * answered, and what it sends is checked to the last field. `startFile` gives the file a window was opened with.
 */
export function serveHostApi(startFile: (window: BrowserWindow) => string | null): void {
  const places = createJobPlaces();
  const drafts = createDraftCalls(createDrafts(join(stateFolder(), 'drafts')), places);
  const sessions = new WeakMap<BrowserWindow, string>();
  const sessionOf = (window: BrowserWindow): string => {
    const session = sessions.get(window) ?? randomBytes(16).toString('hex');
    sessions.set(window, session);
    return session;
  };

  serve(hostChannels.openedAtStart, async (window): Reply<HostFile> => {
    const path = startFile(window);
    return path === null ? null : places.open(path);
  });

  serve(hostChannels.chooseFile, async (window): Reply<HostFile> => {
    const path = await askForFile(window);
    return path === null ? null : places.open(path);
  });

  serve(hostChannels.saveJob, async (window, value): Reply<SavedJob> => {
    const request = saveJobRequest(value);
    if (!request.ok) return request;
    const { token, suggestedName, text, replaceChanged } = request.value;
    const known = token === null ? null : places.pathOf(token);
    if (token !== null && known === null) {
      return failed(
        'token-unknown',
        'The place to save to is not known',
        '',
        'Save the job under a new name.',
      );
    }
    const path = known ?? (await askForOwnPlace(window, suggestedName, ownFiles.job));
    if (path === null) return null;
    // The dialog has asked before it gave the name of a file that is there.
    return places.save(path, text, replaceChanged || known === null);
  });

  serve(hostChannels.saveOwnFile, async (window, value): Reply<{ readonly name: string }> => {
    const request = saveOwnFileRequest(value);
    if (!request.ok) return request;
    const { kind, suggestedName, text } = request.value;
    const path = await askForOwnPlace(window, suggestedName, ownFiles[kind]);
    if (path === null) return null;
    const saved = await saveAtomically(path, text);
    return saved.ok ? done({ name: basename(path) }) : saved;
  });

  serve(hostChannels.keepDraft, (window, value): Reply<null> => drafts.keepDraft(sessionOf(window), value));
  serve(hostChannels.leftOver, (): Reply<readonly KeptDraft[]> => drafts.leftOver());
  serve(hostChannels.dropDraft, (_window, value): Reply<null> => drafts.dropDraft(value));

  serve(hostChannels.exportFiles, async (window, value): Reply<ExportedFiles> => {
    const request = exportRequest(value);
    if (!request.ok) return request;
    const { folderName, files } = request.value;
    const folder = await askForExportFolder(
      window,
      folderName,
      files.map(({ name }) => name),
    );
    if (folder === null) return null;
    const written = await writeFilesTogether(folder, files);
    return written.ok ? done({ folder, names: written.value.map((path) => basename(path)) }) : written;
  });
}

function serve(
  channel: HostChannel,
  answer: (window: BrowserWindow, value: unknown) => Reply<unknown>,
): void {
  ipcMain.handle(channel, (event, ...values: unknown[]) => {
    const window = senderWindow(event);
    if (!window) throw new Error(`Refused: ${channel} from a page that is not ours`);
    if (values.length > 1) throw new Error(`Refused: ${channel} with ${values.length} arguments`);
    return answer(window, values[0]);
  });
}

/** The window whose own page has called; null for any other frame or address. */
function senderWindow({ sender, senderFrame }: IpcMainInvokeEvent): BrowserWindow | null {
  if (!senderFrame || senderFrame !== sender.mainFrame || !isPageAddress(senderFrame.url)) return null;
  return BrowserWindow.fromWebContents(sender);
}
