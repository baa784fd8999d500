import { Maximize } from 'lucide-react';
import type { Command } from '../command';
import { planBox } from '../plan-box';
import { fitted } from '../viewport';

export const fitViewCommand: Command = {
  id: 'fit',
  group: 'View',
  label: () => 'Show everything',
  shortcuts: ['F', 'Home'],
  icon: Maximize,
  enabled: (state) => state.made !== null,
  run: ({ store }) => {
    const { made, canvasSize } = store.getState();
    if (made) store.setState({ viewport: fitted(planBox(made.plan), canvasSize) });
  },
};
