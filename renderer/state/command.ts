import type { LucideIcon } from 'lucide-react';
import type { AppState } from './app-state';
import type { App } from './app-store';

export type CommandGroup = 'File' | 'Edit' | 'View' | 'Cut' | 'Review' | 'Help';

/** Something a person can ask for from the menu, the toolbar or the keyboard: all three are made from one list. */
export interface Command {
  readonly id: string;
  readonly group: CommandGroup;
  /** As the menu says it now, e.g. "Undo Wire 0.15 mm". */
  label(state: AppState): string;
  /** e.g. `Mod+Shift+Z` (Mod is ⌘ on a Mac and Ctrl elsewhere); the first is the one shown. */
  readonly shortcuts: readonly string[];
  readonly icon?: LucideIcon;
  enabled(state: AppState): boolean;
  run(app: App): void | Promise<void>;
}
