import { PanelRight } from 'lucide-react';
import type { Command } from '../command';

export const switchPaneCommand: Command = {
  id: 'pane',
  group: 'View',
  label: ({ pane }) => (pane === 'review' ? 'Look at the drawing' : 'Back to the review list'),
  shortcuts: ['D'],
  icon: PanelRight,
  enabled: ({ history }) => history !== null,
  run: ({ store }) => store.setState(({ pane }) => ({ pane: pane === 'review' ? 'drawing' : 'review' })),
};
