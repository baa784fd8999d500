import { Ruler } from 'lucide-react';
import type { Command } from '../command';

export const switchUnitCommand: Command = {
  id: 'switch-unit',
  group: 'View',
  label: ({ unit }) => (unit === 'mm' ? 'Show inches' : 'Show millimetres'),
  shortcuts: ['U'],
  icon: Ruler,
  enabled: () => true,
  run: ({ store }) => store.setState(({ unit }) => ({ unit: unit === 'mm' ? 'inch' : 'mm' })),
};
