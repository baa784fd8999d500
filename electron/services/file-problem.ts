import { failed, type Problem } from '../../core/problem';

type Doing = 'read' | 'written';

const sentences: Record<string, (doing: Doing) => readonly [code: string, what: string, whatToDo: string]> = {
  ENOENT: (doing) =>
    doing === 'read'
      ? ['file-missing', 'There is no such file', 'Check the name and the folder.']
      : ['folder-missing', 'The folder to write into is not there', 'Make the folder or choose another one.'],
  ENOTDIR: () => ['folder-missing', 'A part of the path is a file, not a folder', 'Choose another folder.'],
  EISDIR: (doing) => ['file-is-folder', `A folder cannot be ${doing} as a file`, 'Give the name of a file.'],
  EACCES: (doing) => [
    'file-denied',
    `The file may not be ${doing} with your rights`,
    'Ask for the right or choose another place.',
  ],
  ENOSPC: () => ['disk-full', 'The disk is full', 'Free some space or choose another disk.'],
  EROFS: () => ['file-denied', 'The disk can only be read', 'Choose another place.'],
  ENAMETOOLONG: () => ['name-too-long', 'The name is too long for this disk', 'Choose a shorter name.'],
  EIO: () => [
    'disk-gone',
    'The disk or the network drive does not answer',
    'Check the cable or the connection and try again, or choose another place.',
  ],
  EBUSY: () => ['file-busy', 'Another program holds the file', 'Close it there and try again.'],
};
sentences['EPERM'] = sentences['EACCES'] as (typeof sentences)[string];
sentences['EEXIST'] = sentences['ENOTDIR'] as (typeof sentences)[string];
for (const code of [
  'ESTALE',
  'ENETDOWN',
  'ENETUNREACH',
  'ENOTCONN',
  'ENXIO',
  'ENODEV',
  'EHOSTDOWN',
  'EHOSTUNREACH',
  'ETIMEDOUT',
]) {
  sentences[code] = sentences['EIO'] as (typeof sentences)[string];
}
sentences['EDQUOT'] = sentences['ENOSPC'] as (typeof sentences)[string];
sentences['EMFILE'] = sentences['EBUSY'] as (typeof sentences)[string];

/**
 * What the operating system said about a file, as a problem a person can act on. Errors that are not the operating
 * system's are our own mistakes and are thrown again.
 */
export function fileProblem(error: unknown, path: string, doing: Doing): { ok: false; problem: Problem } {
  const code = systemCode(error);
  if (code === null) throw error;
  const sentence = sentences[code]?.(doing) ?? [
    'file-trouble',
    `The file could not be ${doing}: the operating system says ${code}`,
    'Try another place.',
  ];
  return failed(sentence[0], sentence[1], path, sentence[2]);
}

function systemCode(error: unknown): string | null {
  if (!(error instanceof Error) || !('code' in error) || !('syscall' in error)) return null;
  return typeof error.code === 'string' ? error.code : null;
}
