import type { HostApi, HostFile, HostReply } from '../../electron/contract/host-api';
import {
  localWindowCalls,
  type LocalWindowCall,
  type LocalWindowReplies,
  type LocalWindowRequests,
  type WireFile,
} from '../../electron/contract/local-window-protocol';
import { chooseFile } from './choose-file';

/** The host of a page that the local window's server has served: calls go to the same origin. */
export function localWindowHost(page: Window): HostApi {
  return {
    kind: 'local window',
    openedAtStart: async () => fileFromWire(await call(page, 'openedAtStart', {})),
    chooseFile: async () => {
      const file = await chooseFile(page);
      return file && { ok: true, value: file };
    },
    saveJob: (request) => call(page, 'saveJob', request),
    saveOwnFile: (request) => call(page, 'saveOwnFile', request),
    keepDraft: (request) => call(page, 'keepDraft', request),
    leftOver: () => call(page, 'leftOver', {}),
    dropDraft: (id) => call(page, 'dropDraft', { id }),
    exportFiles: (request) => call(page, 'exportFiles', request),
  };
}

async function call<C extends LocalWindowCall>(
  page: Window,
  name: C,
  request: LocalWindowRequests[C],
): Promise<LocalWindowReplies[C] | HostReply<never>> {
  let reply: Response;
  try {
    reply = await page.fetch(localWindowCalls[name], {
      method: 'POST',
      credentials: 'same-origin',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(request),
    });
  } catch {
    return {
      ok: false,
      problem: {
        code: 'host-gone',
        what: 'The program behind this window no longer answers',
        where: page.location.host,
        whatToDo: 'Start Diewright again and open the address that it prints; keep this window until then.',
      },
    };
  }
  // Refusals (4xx) carry a problem in the same form as a user's error.
  return (await reply.json()) as LocalWindowReplies[C];
}

function fileFromWire(reply: HostReply<WireFile> | null): HostReply<HostFile> | null {
  if (!reply?.ok) return reply;
  const { name, token, bytesBase64 } = reply.value;
  const bytes = Uint8Array.from(atob(bytesBase64), (character) => character.charCodeAt(0));
  return { ok: true, value: { name, token, bytes } };
}
