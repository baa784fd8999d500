import { openSeal } from '../../core/output/program-seal';
import { failed } from '../../core/problem';
import type { HostFile } from '../../electron/contract/host-api';
import type { App } from './app-store';

/** Whether a file is a program, by its name or its seal. */
export const isProgram = ({ name, bytes }: HostFile): boolean =>
  /\.nc$/i.test(name) || (bytes.length < largestProgram && openSeal(textOf(bytes)) !== null);

/** Holds a program on disk against the open job; it changes nothing. */
export async function verifyFile(app: App, { name, bytes }: HostFile): Promise<void> {
  const { store, core } = app;
  const job = store.getState().history?.present;
  if (!job) {
    const { problem } = failed(
      'program-no-job',
      'A program can only be held against its job',
      name,
      'Open the job first, then the program again.',
    );
    store.setState({ trouble: problem });
    return;
  }
  const verdict = await core.verify(job, textOf(bytes));
  store.setState(verdict.ok ? { verified: { name, verdict: verdict.value } } : { trouble: verdict.problem });
}

/** What is longer is looked at only under the name of a program. */
const largestProgram = 32 * 1024 * 1024;

const textOf = (bytes: Uint8Array): string => new TextDecoder('utf-8').decode(bytes);
