import type {
  ExportRequest,
  HostApi,
  HostFile,
  HostReply,
  SaveJobRequest,
} from '../../../electron/contract/host-api';

export interface MemoryHost extends HostApi {
  /** What the next choice of a file answers; null: cancelled. */
  nextFile: HostReply<HostFile> | null;
  /** A refusal for the next save or export. */
  refusal: HostReply<never> | null;
  readonly saved: SaveJobRequest[];
  readonly exported: ExportRequest[];
}

/** A host that keeps everything in memory. */
export function memoryHost(): MemoryHost {
  const host: MemoryHost = {
    kind: 'desktop',
    nextFile: null,
    refusal: null,
    saved: [],
    exported: [],
    openedAtStart: () => Promise.resolve(null),
    chooseFile: () => Promise.resolve(host.nextFile),
    saveJob: (request) => {
      if (host.refusal) return Promise.resolve(host.refusal);
      host.saved.push(request);
      return Promise.resolve({ ok: true, value: { token: 'place-1', name: request.suggestedName } });
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
