import type { Command } from '../command';

export const clearSelectionCommand: Command = {
  id: 'clear-selection',
  group: 'Review',
  label: () => 'Let go of the selection',
  shortcuts: ['Escape'],
  enabled: (state) => state.selected !== null,
  run: ({ store }) => store.setState({ selected: null }),
};
