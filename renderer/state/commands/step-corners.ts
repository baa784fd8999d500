import { cornerIndex, nearestCorner, sameCorner } from '../../picture/corner-index';
import { placeOfFinding } from '../../picture/place-of-finding';
import type { AppState } from '../app-state';
import type { App } from '../app-store';
import type { Command } from '../command';
import { showCorner } from '../show-corner';

/** Opens the rules of the corner at the finding that is picked out, else of the one nearest to the picture's middle. */
export const openCornerCommand: Command = {
  id: 'open-corner',
  group: 'Edit',
  label: () => 'Rules of the corner here',
  shortcuts: ['C'],
  enabled: hasCorners,
  run: (app) => {
    const { made, viewport, selected } = app.store.getState();
    if (!made) return;
    const finding =
      selected?.kind === 'finding' ? made.plan.findings.find(({ key }) => key === selected.key) : undefined;
    const place = (finding && placeOfFinding(made.plan, finding)) ?? viewport.centre;
    const corner = nearestCorner(made.plan, place, finding?.contourId ?? undefined);
    if (corner) showCorner(app, corner.name);
  },
};

export const nextCornerCommand: Command = {
  id: 'next-corner',
  group: 'Edit',
  label: () => 'Next corner',
  shortcuts: [']'],
  enabled: hasCorners,
  run: (app) => step(app, 1),
};

export const previousCornerCommand: Command = {
  id: 'previous-corner',
  group: 'Edit',
  label: () => 'Previous corner',
  shortcuts: ['['],
  enabled: hasCorners,
  run: (app) => step(app, -1),
};

function hasCorners({ made }: AppState): boolean {
  return made !== null && cornerIndex(made.plan).all.length > 0;
}

/** Goes round: after the last corner of the last contour comes the first. */
function step(app: App, by: 1 | -1): void {
  const { made, openCorner } = app.store.getState();
  if (!made) return;
  const { all } = cornerIndex(made.plan);
  const at = all.findIndex(({ name }) => sameCorner(name, openCorner));
  const start = at < 0 && by < 0 ? 0 : at;
  const corner = all[(start + by + all.length) % all.length];
  if (corner) showCorner(app, corner.name);
}
