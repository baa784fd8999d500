import type { Problem } from '../../core/problem';

/** A file the user chose. The page never learns a path: the token stands for the place on disk. */
export interface HostFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Saving with this token goes back to the same place; null where the file may not be written back (a drawing). */
  readonly token: string | null;
}

export type HostReply<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

export interface SaveJobRequest {
  /** Null asks the user for a place. */
  readonly token: string | null;
  readonly suggestedName: string;
  readonly text: string;
  /** Whether a file that somebody else has changed since it was opened may be replaced; else that is a problem. */
  readonly replaceChanged: boolean;
}

export interface SavedJob {
  readonly token: string;
  readonly name: string;
}

/** Unsaved work of a window. The drawing is sent only when it is another one than in the last request. */
export interface KeepDraftRequest {
  readonly name: string;
  /** The job as text, its drawing's content left empty; null where nothing is unsaved any more. */
  readonly job: string | null;
  readonly drawing: string | null;
  /** Where the job was opened from or saved to. */
  readonly token: string | null;
}

/** Work that a window which is no longer there had not saved. */
export interface KeptDraft {
  readonly id: string;
  readonly name: string;
  /** ISO 8601. */
  readonly keptAt: string;
  readonly job: string;
  readonly drawing: string;
  readonly token: string | null;
}

/** Files of ours besides jobs. */
export type OwnFileKind = 'technology' | 'style' | 'materials';

export interface SaveOwnFileRequest {
  readonly kind: OwnFileKind;
  readonly suggestedName: string;
  readonly text: string;
}

export interface ExportRequest {
  /** Proposed folder name, made from the job's name. */
  readonly folderName: string;
  readonly files: readonly FileContent[];
}

export interface FileContent {
  readonly name: string;
  readonly text: string;
  /** The text is bytes, one character each. */
  readonly isBytes?: boolean | undefined;
}

export interface ExportedFiles {
  /** Where the files are, in words for the user. */
  readonly folder: string;
  readonly names: readonly string[];
}

/**
 * All that the page may ask of the computer. Two hosts offer it: the desktop shell through its preload script, and
 * the local window through its server. A reply of null means that the user cancelled.
 */
export interface HostApi {
  readonly kind: 'desktop' | 'local window';
  /** The drawing or job the program was started with. */
  openedAtStart(): Promise<HostReply<HostFile> | null>;
  /** Asks for a drawing, a job or another file of ours. */
  chooseFile(): Promise<HostReply<HostFile> | null>;
  saveJob(request: SaveJobRequest): Promise<HostReply<SavedJob> | null>;
  /** Saves a technology table or a program style under a name that the user gives. */
  saveOwnFile(request: SaveOwnFileRequest): Promise<HostReply<{ readonly name: string }> | null>;
  /** Keeps unsaved work where a crash cannot take it. */
  keepDraft(request: KeepDraftRequest): Promise<HostReply<null>>;
  /** Unsaved work that windows before this one left behind, newest first. */
  leftOver(): Promise<HostReply<readonly KeptDraft[]>>;
  dropDraft(id: string): Promise<HostReply<null>>;
  /** Writes all files or none. */
  exportFiles(request: ExportRequest): Promise<HostReply<ExportedFiles> | null>;
}
