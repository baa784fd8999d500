import { Layers, PanelRight, Ruler } from 'lucide-react';
import type { Command } from '../command';

export const switchPaneCommand: Command = {
  id: 'pane',
  group: 'View',
  label: ({ pane }) => (pane === 'drawing' ? 'Back to the review list' : 'Look at the drawing'),
  shortcuts: ['D'],
  icon: PanelRight,
  enabled: ({ history }) => history !== null,
  run: ({ store }) => store.setState(({ pane }) => ({ pane: pane === 'drawing' ? 'review' : 'drawing' })),
};

export const switchDieSetCommand: Command = {
  id: 'die-set',
  group: 'View',
  label: ({ pane }) => (pane === 'die-set' ? 'Back to the review list' : 'Look at the die set'),
  shortcuts: ['S'],
  icon: Layers,
  enabled: ({ history }) => history !== null,
  run: ({ store }) => store.setState(({ pane }) => ({ pane: pane === 'die-set' ? 'review' : 'die-set' })),
};

export const switchInspectionCommand: Command = {
  id: 'inspection',
  group: 'View',
  label: ({ pane }) => (pane === 'inspect' ? 'Back to the review list' : 'Inspect punch and die'),
  shortcuts: ['I'],
  icon: Ruler,
  enabled: ({ history }) => history !== null,
  run: ({ store }) => store.setState(({ pane }) => ({ pane: pane === 'inspect' ? 'review' : 'inspect' })),
};
