import { access } from 'node:fs/promises';
import { join } from 'node:path';
import { dialog, type BrowserWindow } from 'electron';
import { cleanFileName } from '../services/file-name-trouble';
import { withEnding, type OwnFileWords } from '../services/own-files';

/** The drawing or job the user picks; null when cancelled. */
export async function askForFile(window: BrowserWindow): Promise<string | null> {
  const { canceled, filePaths } = await dialog.showOpenDialog(window, {
    title: 'Open a drawing, a job, a technology table, a program style or a program to verify',
    properties: ['openFile'],
    filters: [
      { name: 'Drawings and jobs', extensions: ['dxf', 'svg', 'csv', 'txt', 'json'] },
      { name: 'Programs, to be held against the job', extensions: ['nc'] },
      { name: 'All files', extensions: ['*'] },
    ],
  });
  return canceled ? null : (filePaths[0] ?? null);
}

/** Where a file shall go, always with its ending; the dialog itself asks before it replaces a file. */
export async function askForOwnPlace(
  window: BrowserWindow,
  suggestedName: string,
  { title, name, ending, stem }: OwnFileWords,
): Promise<string | null> {
  const { canceled, filePath } = await dialog.showSaveDialog(window, {
    title,
    defaultPath: cleanFileName(suggestedName, `${stem}${ending}`),
    filters: [{ name, extensions: [ending.slice(1)] }],
  });
  if (canceled || !filePath) return null;
  const path = withEnding(filePath, ending);
  // The dialog did not know another name when it asked.
  return path === filePath || (await mayReplace(window, [path])) ? path : null;
}

/** The folder for the output files: one of the job's own name in the folder the user picks. */
export async function askForExportFolder(
  window: BrowserWindow,
  folderName: string,
  fileNames: readonly string[],
): Promise<string | null> {
  const own = cleanFileName(folderName, 'job');
  const { canceled, filePaths } = await dialog.showOpenDialog(window, {
    title: `Choose where the folder "${own}" goes`,
    buttonLabel: 'Export here',
    properties: ['openDirectory', 'createDirectory'],
  });
  const parent = filePaths[0];
  if (canceled || parent === undefined) return null;
  const folder = join(parent, own);
  const mayWrite = await mayReplace(
    window,
    fileNames.map((name) => join(folder, name)),
  );
  return mayWrite ? folder : null;
}

async function mayReplace(window: BrowserWindow, paths: readonly string[]): Promise<boolean> {
  const there = await Promise.all(
    paths.map((path) =>
      access(path).then(
        () => path,
        () => null,
      ),
    ),
  );
  const existing = there.filter((path) => path !== null);
  if (existing.length === 0) return true;
  const { response } = await dialog.showMessageBox(window, {
    type: 'question',
    message:
      existing.length === 1
        ? 'This file is there already.'
        : `${existing.length} of these files are there already.`,
    detail: existing.slice(0, 10).join('\n'),
    buttons: ['Keep them', 'Replace'],
    defaultId: 0,
    cancelId: 0,
  });
  return response === 1;
}
