import type { HostFile } from '../../electron/contract/host-api';

/** Asks with the browser's own file dialog for a drawing or a job; null where the user cancelled. Its files can't be written back. */
export const chooseFile = (page: Window): Promise<HostFile | null> =>
  choose(page, '.dxf,.svg,.csv,.txt,.json,.nc');

/** The same for a list of measured points. */
export const choosePoints = (page: Window): Promise<HostFile | null> =>
  choose(page, '.csv,.txt,.asc,.dat,.tsv');

function choose(page: Window, kinds: string): Promise<HostFile | null> {
  return new Promise((resolve, reject) => {
    const input = page.document.createElement('input');
    input.type = 'file';
    input.accept = kinds;
    input.hidden = true;
    const finish = (file: HostFile | null) => {
      input.remove();
      resolve(file);
    };
    input.addEventListener('cancel', () => finish(null));
    input.addEventListener('change', () => {
      const file = input.files?.[0];
      if (!file) finish(null);
      else fileOfBrowser(file).then(finish, reject);
    });
    // In the document, so that the dialog belongs to this window and a browser under test sees it.
    page.document.body.append(input);
    input.click();
  });
}

/** A file of the browser (dialog or drop) as the host hands files over. */
export async function fileOfBrowser(file: File): Promise<HostFile> {
  return { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()), token: null };
}
