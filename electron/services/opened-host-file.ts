import { done, type Result } from '../../core/problem';
import { jobFileEnding } from '../../core/job';
import type { HostFile } from '../contract/host-api';
import { openFile } from './open-file';
import type { PathTokens } from './path-tokens';

/** Opens a file for the page. Only a job may be written back to its place: a customer's drawing gets no token. */
export async function openedHostFile(path: string, tokens: PathTokens): Promise<Result<HostFile>> {
  const opened = await openFile(path);
  if (!opened.ok) return opened;
  const isJob = path.toLowerCase().endsWith(jobFileEnding);
  return done({ ...opened.value, token: isJob ? tokens.tokenFor(path) : null });
}
