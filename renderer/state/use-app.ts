import { createContext, use } from 'react';
import { useStore } from 'zustand';
import { invariant } from '../../core/problem';
import type { AppState } from './app-state';
import type { App } from './app-store';

export const AppContext = createContext<App | null>(null);

/** The app of this window, to run commands on. */
export function useApp(): App {
  const app = use(AppContext);
  invariant(app, 'a component outside of the window');
  return app;
}

/** A part of the state; the component renders again when it changes. */
export function useAppState<T>(select: (state: AppState) => T): T {
  return useStore(useApp().store, select);
}
