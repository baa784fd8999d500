import {
  programStyleSchema,
  styleFileEnding,
  styleFormat,
  styleVersion,
  type ProgramStyle,
} from './program-style';
import type { Result } from './problem';
import { readOwnFile } from './read-own-file';

/** Reads a program style; comments in the file are for its readers alone. */
export const readStyleFile = (text: string): Result<ProgramStyle> =>
  readOwnFile(text, {
    code: 'style',
    noun: 'program style',
    format: styleFormat,
    version: styleVersion,
    ending: styleFileEnding,
    schema: programStyleSchema,
  });
