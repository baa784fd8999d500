import { FileOutput } from 'lucide-react';
import { jobOf } from '../app-state';
import type { Command } from '../command';

export const exportFilesCommand: Command = {
  id: 'export',
  group: 'File',
  label: (state) => (state.made && !state.made.plan.released ? 'Export as DRAFT…' : 'Export files…'),
  shortcuts: ['Mod+E'],
  icon: FileOutput,
  // Only what is on the screen is written: not while a change is still being worked out, nor after it failed.
  enabled: (state) => state.made !== null && state.made.job === jobOf(state) && state.problem === null,
  run: async ({ store, core, host }) => {
    const job = jobOf(store.getState());
    if (!job) return;
    const files = await core.files(job);
    if (!files.ok) {
      store.setState({ trouble: files.problem });
      return;
    }
    const reply = await host.exportFiles({ folderName: job.name, files: files.value });
    if (reply === null) return;
    if (!reply.ok) {
      store.setState({ trouble: reply.problem });
      return;
    }
    const { folder, names } = reply.value;
    store.setState({ trouble: null, said: `Wrote ${names.length} files to ${folder}` });
  },
};
