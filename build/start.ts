import { resolve } from 'node:path';
import { electronBinary, fetchElectron, openWindow } from './open-window';
import { projectFolder, runNode } from './run-command';

/** `npm start [-- FILE]`: builds and opens the window, in the desktop shell where it is or can be fetched. */
const built = await runNode(['build/run-typescript.mjs', 'build/build.ts']);
// The file is meant from where npm was called.
const from = process.env['INIT_CWD'] ?? projectFolder;
const files = process.argv.slice(2).map((file) => resolve(from, file));
process.exitCode = built === 0 ? await openWindow(files, electronBinary() ?? (await fetchElectron())) : built;
