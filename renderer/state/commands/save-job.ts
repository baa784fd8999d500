import { Save } from 'lucide-react';
import { jobFileEnding } from '../../../core/job';
import { writeJobFile } from '../../../core/job-file';
import { jobOf } from '../app-state';
import type { App } from '../app-store';
import type { Command } from '../command';

export const saveJobCommand: Command = {
  id: 'save',
  group: 'File',
  label: () => 'Save job',
  shortcuts: ['Mod+S'],
  icon: Save,
  enabled: (state) => state.history !== null,
  run: (app) => saveJob(app, app.store.getState().file.token),
};

/** Saves the open job to the token's place, or asks for one. A file that somebody else has changed is asked about. */
export async function saveJob(
  { store, host }: App,
  token: string | null,
  replaceChanged = false,
): Promise<void> {
  const job = jobOf(store.getState());
  if (!job) return;
  const reply = await host.saveJob({
    token,
    suggestedName: `${job.name}${jobFileEnding}`,
    text: writeJobFile(job),
    replaceChanged,
  });
  if (reply === null) return;
  if (!reply.ok) {
    store.setState(
      reply.problem.code === 'file-changed-elsewhere' ? { clash: reply.problem } : { trouble: reply.problem },
    );
    return;
  }
  store.setState({
    file: { token: reply.value.token, saved: job },
    trouble: null,
    said: `Saved ${reply.value.name}`,
  });
}
