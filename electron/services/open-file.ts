import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { done, failed, type Result } from '../../core/problem';
import { fileProblem } from './file-problem';

export interface OpenedFile {
  /** Without its folder. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A customer's outline of a million segments is about 60 MB; more than this is some other kind of file. */
export const largestFileBytes = 96 * 1024 * 1024;

/** The file's name and bytes. Files that are larger than the limit, and things that are no files, are not read at all. */
export async function openFile(path: string, limit = largestFileBytes): Promise<Result<OpenedFile>> {
  try {
    // Asked before the file is opened: opening a pipe would wait for somebody to write into it.
    const found = await stat(path);
    if (found.isDirectory()) {
      return failed('file-is-folder', 'A folder cannot be read as a file', path, 'Give the name of a file.');
    }
    if (!found.isFile()) {
      return failed('file-no-file', 'This is a device or a pipe, not a file', path, 'Give a file.');
    }
    if (found.size > limit) {
      return failed(
        'file-too-large',
        `The file has ${megabytes(found.size)} MB, more than the ${megabytes(limit)} MB that can be read`,
        path,
        'Save only the part in a drawing of its own.',
      );
    }
    return done({ name: basename(path), bytes: new Uint8Array(await readFile(path)) });
  } catch (error) {
    return fileProblem(error, path, 'read');
  }
}

const megabytes = (bytes: number): string => (bytes / 1024 / 1024).toFixed(1);
