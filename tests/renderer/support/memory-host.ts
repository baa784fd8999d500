import type {
  ExportRequest,
  HostApi,
  HostFile,
  HostReply,
  KeepDraftRequest,
  KeptDraft,
  SaveJobRequest,
  SaveOwnFileRequest,
} from '../../../electron/contract/host-api';

export interface MemoryHost extends HostApi {
  /** What the next choice of a file answers; null: cancelled. */
  nextFile: HostReply<HostFile> | null;
  /** A refusal for the next save or export. */
  refusal: HostReply<never> | null;
  readonly saved: SaveJobRequest[];
  readonly savedOwn: SaveOwnFileRequest[];
  readonly exported: ExportRequest[];
  readonly drafts: KeepDraftRequest[];
  left: readonly KeptDraft[];
  readonly dropped: string[];
}

/** A host that keeps everything in memory. */
export function memoryHost(): MemoryHost {
  const host: MemoryHost = {
    kind: 'desktop',
    nextFile: null,
    refusal: null,
    saved: [],
    savedOwn: [],
    exported: [],
    drafts: [],
    left: [],
    dropped: [],
    openedAtStart: () => Promise.resolve(null),
    chooseFile: () => Promise.resolve(host.nextFile),
    saveJob: (request) => {
      if (host.refusal) return Promise.resolve(host.refusal);
      host.saved.push(request);
      return Promise.resolve({ ok: true, value: { token: 'place-1', name: request.suggestedName } });
    },
    saveOwnFile: (request) => {
      if (host.refusal) return Promise.resolve(host.refusal);
      host.savedOwn.push(request);
      return Promise.resolve({ ok: true, value: { name: request.suggestedName } });
    },
    keepDraft: (request) => {
      if (host.refusal) return Promise.resolve(host.refusal);
      host.drafts.push(request);
      return Promise.resolve({ ok: true, value: null });
    },
    leftOver: () => Promise.resolve({ ok: true, value: host.left }),
    dropDraft: (id) => {
      host.dropped.push(id);
      return Promise.resolve({ ok: true, value: null });
    },
    exportFiles: (request) => {
      if (host.refusal) return Promise.resolve(host.refusal);
      host.exported.push(request);
      return Promise.resolve({
        ok: true,
        value: { folder: 'out', names: request.files.map(({ name }) => name) },
      });
    },
  };
  return host;
}
