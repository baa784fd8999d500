import { cutPlaces } from '../../picture/cut-places';
import type { AppState } from '../app-state';
import type { App } from '../app-store';
import { sameCut } from '../cut-name';
import type { Command } from '../command';
import { showCut } from '../show-cut';

export const nextCutCommand: Command = {
  id: 'next-cut',
  group: 'Edit',
  label: () => 'Next start hole',
  shortcuts: ['.'],
  enabled: hasCuts,
  run: (app) => step(app, 1),
};

export const previousCutCommand: Command = {
  id: 'previous-cut',
  group: 'Edit',
  label: () => 'Previous start hole',
  shortcuts: [','],
  enabled: hasCuts,
  run: (app) => step(app, -1),
};

function hasCuts({ made }: AppState): boolean {
  return made !== null && cutPlaces(made.plan).length > 0;
}

/** Goes round: after the last stretch of the last cut comes the first. */
function step(app: App, by: 1 | -1): void {
  const { made, openCut } = app.store.getState();
  if (!made) return;
  const all = cutPlaces(made.plan);
  const at = all.findIndex((place) => sameCut(place, openCut));
  const start = at < 0 && by < 0 ? 0 : at;
  const place = all[(start + by + all.length) % all.length];
  if (place) showCut(app, place);
}
