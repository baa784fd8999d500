import { createStore, type StoreApi } from 'zustand/vanilla';
import type { HostApi } from '../../electron/contract/host-api';
import type { CoreClient } from '../worker/core-client';
import { emptyState, type AppState } from './app-state';

/** The state of the window and the two things outside of it that commands may use. */
export interface App {
  readonly store: StoreApi<AppState>;
  readonly host: HostApi;
  readonly core: CoreClient;
}

export function createApp(host: HostApi, core: CoreClient, initial: Partial<AppState> = {}): App {
  return { store: createStore<AppState>(() => ({ ...emptyState, ...initial })), host, core };
}
