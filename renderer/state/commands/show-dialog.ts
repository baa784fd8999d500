import { Info, Keyboard, Layers2, Table2 } from 'lucide-react';
import type { Command } from '../command';

export const showTechnologyCommand: Command = {
  id: 'technology',
  group: 'Edit',
  label: () => 'Technology table…',
  shortcuts: ['T'],
  icon: Table2,
  enabled: (state) => state.history !== null,
  run: ({ store }) => store.setState({ dialog: 'technology' }),
};

export const showStockCommand: Command = {
  id: 'stock',
  group: 'Edit',
  label: () => 'Stock table…',
  shortcuts: [],
  icon: Layers2,
  enabled: (state) => state.history !== null,
  run: ({ store }) => store.setState({ dialog: 'stock' }),
};

export const showKeysCommand: Command = {
  id: 'keys',
  group: 'Help',
  label: () => 'Keys',
  shortcuts: ['?'],
  icon: Keyboard,
  enabled: () => true,
  run: ({ store }) => store.setState({ dialog: 'keys' }),
};

export const showAboutCommand: Command = {
  id: 'about',
  group: 'Help',
  label: () => 'About Diewright and cautions',
  shortcuts: [],
  icon: Info,
  enabled: () => true,
  run: ({ store }) => store.setState({ dialog: 'about' }),
};
