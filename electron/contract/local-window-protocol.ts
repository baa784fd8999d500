import type {
  ExportedFiles,
  ExportRequest,
  HostFile,
  HostReply,
  KeepDraftRequest,
  KeptDraft,
  SavedJob,
  SaveJobRequest,
  SaveOwnFileRequest,
} from './host-api';

/**
 * How the page talks to the local window's server, which stands in for the desktop shell where its binary is not
 * there. The page is served from 127.0.0.1; every call is a POST with a JSON body and the same-origin cookie that
 * the server gave in exchange for the one-time token of the address. `fetch` with `credentials: 'same-origin'` and
 * `content-type: application/json` is all the page needs; the Origin header comes by itself.
 *
 * Choosing a file happens in the page (a file input), so there is no call for it.
 */
export const localWindowCalls = {
  openedAtStart: '/host/opened-at-start',
  saveJob: '/host/save-job',
  saveOwnFile: '/host/save-own-file',
  keepDraft: '/host/keep-draft',
  leftOver: '/host/left-over',
  dropDraft: '/host/drop-draft',
  exportFiles: '/host/export-files',
} as const;

export type LocalWindowCall = keyof typeof localWindowCalls;

/**
 * The server writes `<meta name="diewright-host" content="local window">` into the page it serves. A page without it
 * and without `window.diewrightHost` (the desktop shell) has no host and must make do with downloads.
 */
export const hostMetaName = 'diewright-host';

/** A file on the wire: its bytes in base64 (RFC 4648, section 4). */
export interface WireFile extends Omit<HostFile, 'bytes'> {
  readonly bytesBase64: string;
}

/** What the page sends as JSON. */
export interface LocalWindowRequests {
  readonly openedAtStart: Record<string, never>;
  readonly saveJob: SaveJobRequest;
  readonly saveOwnFile: SaveOwnFileRequest;
  readonly keepDraft: KeepDraftRequest;
  readonly leftOver: Record<string, never>;
  readonly dropDraft: { readonly id: string };
  readonly exportFiles: ExportRequest;
}

/** What comes back as JSON with status 200; a user's error is `{ ok: false, problem }`, also with status 200. */
export interface LocalWindowReplies {
  readonly openedAtStart: HostReply<WireFile> | null;
  readonly saveJob: HostReply<SavedJob> | null;
  readonly saveOwnFile: HostReply<{ readonly name: string }> | null;
  readonly keepDraft: HostReply<null>;
  readonly leftOver: HostReply<readonly KeptDraft[]>;
  readonly dropDraft: HostReply<null>;
  readonly exportFiles: HostReply<ExportedFiles> | null;
}

/**
 * A call that is refused has another status and a JSON body `{ ok: false, problem }`: 400 not the agreed form,
 * 403 wrong cookie, Host or Origin, 404 no such call, 413 body too large.
 */
export const largestCallBytes = 256 * 1024 * 1024;
