import type { Command } from '../command';
import { saveJob } from './save-job';

export const saveJobAsCommand: Command = {
  id: 'save-as',
  group: 'File',
  label: () => 'Save job as…',
  shortcuts: ['Mod+Shift+S'],
  enabled: (state) => state.history !== null,
  run: (app) => saveJob(app, null),
};
