import type { App } from './app-store';
import type { InspectState } from './inspect-state';

/** Changes a part of what the window knows of inspection. */
export const setInspect = ({ store }: Pick<App, 'store'>, change: Partial<InspectState>): void =>
  store.setState(({ inspect }) => ({ inspect: { ...inspect, ...change } }));
