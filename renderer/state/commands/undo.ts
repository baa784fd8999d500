import { Undo2 } from 'lucide-react';
import type { Command } from '../command';
import { undoLabel, undone } from '../history';

export const undoCommand: Command = {
  id: 'undo',
  group: 'Edit',
  label: ({ history }) => {
    const label = history && undoLabel(history);
    return label ? `Undo: ${label}` : 'Undo';
  },
  shortcuts: ['Mod+Z'],
  icon: Undo2,
  enabled: ({ history }) => history !== null && undoLabel(history) !== null,
  run: ({ store }) => {
    const { history } = store.getState();
    const label = history && undoLabel(history);
    if (label) store.setState({ history: undone(history), said: `Undone: ${label}` });
  },
};
