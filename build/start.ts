import { electronBinary, fetchElectron, openWindow } from './open-window';
import { runNode } from './run-command';

/** `npm start [-- FILE]`: builds and opens the window, in the desktop shell where it is or can be fetched. */
const built = await runNode(['build/run-typescript.mjs', 'build/build.ts']);
process.exitCode =
  built === 0 ? await openWindow(process.argv.slice(2), electronBinary() ?? (await fetchElectron())) : built;
