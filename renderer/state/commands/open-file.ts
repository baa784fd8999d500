import { FolderOpen } from 'lucide-react';
import type { Command } from '../command';
import { openFile } from '../open-file';

export const openFileCommand: Command = {
  id: 'open',
  group: 'File',
  label: () => 'Open drawing or job…',
  shortcuts: ['Mod+O'],
  icon: FolderOpen,
  enabled: () => true,
  run: async (app) => {
    const reply = await app.host.chooseFile();
    if (reply === null) return;
    if (reply.ok) openFile(app, reply.value);
    else app.store.setState({ trouble: reply.problem });
  },
};
