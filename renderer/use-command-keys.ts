import { useEffect } from 'react';
import type { App } from './state/app-store';
import { commandList } from './state/commands/command-list';
import { commandForKey, isMacPage, isOwnKey, isTypingIn } from './state/key-map';

/** Runs commands by their keys, wherever in the window the focus is. */
export function useCommandKeys(app: App): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const state = app.store.getState();
      // A dialog has the keyboard to itself.
      if (event.defaultPrevented || state.dialog || state.unitAsked || state.waiting) return;
      if (isOwnKey(event.target, event.key)) return;
      const command = commandForKey(event, commandList, isMacPage(window), isTypingIn(event.target));
      if (!command?.enabled(state)) return;
      event.preventDefault();
      void command.run(app);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [app]);
}
