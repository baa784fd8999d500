import type { HostApi } from '../../electron/contract/host-api';
import { chooseFile } from './choose-file';

/** The host of a page with no program behind it: files leave as downloads, one after the other. */
export function downloadHost(page: Window): HostApi {
  return {
    kind: 'local window',
    openedAtStart: () => Promise.resolve(null),
    chooseFile: async () => {
      const file = await chooseFile(page);
      return file && { ok: true, value: file };
    },
    saveOwnFile: ({ suggestedName, text }) => {
      download(page, suggestedName, text);
      return Promise.resolve({ ok: true, value: { name: suggestedName } });
    },
    saveJob: ({ suggestedName, text }) => {
      download(page, suggestedName, text);
      return Promise.resolve({ ok: true, value: { token: suggestedName, name: suggestedName } });
    },
    // Nobody is behind this page who could keep anything; the page asks before it closes.
    keepDraft: () => Promise.resolve({ ok: true, value: null }),
    leftOver: () => Promise.resolve({ ok: true, value: [] }),
    dropDraft: () => Promise.resolve({ ok: true, value: null }),
    exportFiles: ({ files }) => {
      for (const { name, text, isBytes } of files) download(page, name, isBytes ? bytesOf(text) : text);
      return Promise.resolve({
        ok: true,
        value: { folder: 'the folder for downloads', names: files.map((file) => file.name) },
      });
    },
  };
}

function download(page: Window, name: string, content: string | Uint8Array<ArrayBuffer>): void {
  const address = URL.createObjectURL(new Blob([content], { type: 'application/octet-stream' }));
  const link = page.document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}

/** One character a byte. */
function bytesOf(text: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(text.length);
  for (let k = 0; k < text.length; k++) bytes[k] = text.charCodeAt(k);
  return bytes;
}
