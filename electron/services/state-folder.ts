import { homedir, platform } from 'node:os';
import { join } from 'node:path';

/**
 * Where the program keeps its own files (drafts, recent files) on this system: XDG Base Directory Specification 0.8
 * on Linux, Application Support on macOS, local application data on Windows. `DIEWRIGHT_STATE` names another place.
 */
export function stateFolder(environment: Readonly<Record<string, string | undefined>> = process.env): string {
  const own = environment['DIEWRIGHT_STATE'];
  if (own) return own;
  const home = homedir();
  if (platform() === 'win32') {
    return join(environment['LOCALAPPDATA'] ?? join(home, 'AppData', 'Local'), 'Diewright');
  }
  if (platform() === 'darwin') return join(home, 'Library', 'Application Support', 'Diewright');
  return join(environment['XDG_STATE_HOME'] || join(home, '.local', 'state'), 'diewright');
}
