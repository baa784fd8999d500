import type { App } from '../app-store';
import type { Command } from '../command';
import { openFindings } from '../open-findings';
import { selectTarget } from '../select-target';

export const nextFindingCommand: Command = {
  id: 'next-finding',
  group: 'Review',
  label: () => 'Next open finding',
  shortcuts: ['N'],
  enabled: (state) => openFindings(state).length > 0,
  run: (app) => step(app, 1),
};

export const previousFindingCommand: Command = {
  id: 'previous-finding',
  group: 'Review',
  label: () => 'Previous open finding',
  shortcuts: ['Shift+N'],
  enabled: (state) => openFindings(state).length > 0,
  run: (app) => step(app, -1),
};

/** Goes round: after the last open finding comes the first. */
function step(app: App, by: 1 | -1): void {
  const { selected } = app.store.getState();
  const open = openFindings(app.store.getState());
  const at = open.findIndex(({ key }) => selected?.kind === 'finding' && selected.key === key);
  // With nothing picked, back means the last one and forward the first.
  const start = at < 0 && by < 0 ? 0 : at;
  const finding = open[(start + by + open.length) % open.length];
  if (finding) selectTarget(app, { kind: 'finding', key: finding.key }, true);
}
