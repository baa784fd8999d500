import { SunMoon } from 'lucide-react';
import type { ThemeChoice } from '../app-state';
import type { Command } from '../command';

export const switchThemeCommand: Command = {
  id: 'switch-theme',
  group: 'View',
  label: ({ theme }) => `Theme: ${themeNames[theme]}; switch to ${themeNames[next[theme]]}`,
  shortcuts: [],
  icon: SunMoon,
  enabled: () => true,
  run: ({ store }) => store.setState(({ theme }) => ({ theme: next[theme] })),
};

const next: Readonly<Record<ThemeChoice, ThemeChoice>> = { system: 'light', light: 'dark', dark: 'system' };
const themeNames: Readonly<Record<ThemeChoice, string>> = {
  system: 'as the system',
  light: 'light',
  dark: 'dark',
};
