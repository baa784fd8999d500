import {
  programStyleSchema,
  styleFileEnding,
  styleFormat,
  styleVersion,
  type ProgramStyle,
} from './program-style';
import { failed, type Result } from './problem';
import { readOwnFile } from './read-own-file';
import { shippedStyles } from './shipped-styles';

/** Reads a program style; comments in the file are for its readers alone. */
export function readStyleFile(text: string): Result<ProgramStyle> {
  const read = readOwnFile(text, {
    code: 'style',
    noun: 'program style',
    format: styleFormat,
    version: styleVersion,
    ending: styleFileEnding,
    schema: programStyleSchema,
  });
  if (!read.ok) return read;
  const { name } = read.value;
  const shipped = Object.values(shippedStyles).find((style) => style.name === name);
  if (!shipped || JSON.stringify(programStyleSchema.parse(shipped)) === JSON.stringify(read.value))
    return read;
  // The head of a program names its style: the name must not promise another one.
  return failed(
    'style-name-taken',
    `The style is called "${name}", like one that comes with the program, and differs from it`,
    '',
    'Give it a name of its own in the file.',
  );
}
