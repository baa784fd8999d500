import { Redo2 } from 'lucide-react';
import type { Command } from '../command';
import { redoLabel, redone } from '../history';

export const redoCommand: Command = {
  id: 'redo',
  group: 'Edit',
  label: ({ history }) => {
    const label = history && redoLabel(history);
    return label ? `Redo: ${label}` : 'Redo';
  },
  shortcuts: ['Mod+Shift+Z', 'Mod+Y'],
  icon: Redo2,
  enabled: ({ history }) => history !== null && redoLabel(history) !== null,
  run: ({ store }) => {
    const { history } = store.getState();
    const label = history && redoLabel(history);
    if (label) store.setState({ history: redone(history), said: `Done again: ${label}` });
  },
};
