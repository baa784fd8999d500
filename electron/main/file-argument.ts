import { resolve } from 'node:path';

/** The drawing or job on the command line; null where there is none. The shell's own switches are not files. */
export function fileArgument(argv: readonly string[], isPackaged: boolean): string | null {
  // Run from the sources the second argument is the program's folder or file.
  const own = argv.slice(isPackaged ? 1 : 2);
  const file = own.find(
    (argument) => !argument.startsWith('-') && /\.(dxf|svg|csv|txt|json)$/i.test(argument),
  );
  return file === undefined ? null : resolve(file);
}
