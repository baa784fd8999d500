import type { Point } from '../../core/geometry/contour';
import { num } from '../../core/geometry/segment-table';
import { deviationAt, referenceOf } from '../../core/inspect/deviation';
import type { Reading } from '../../core/inspect/reading';
import type { SnapPlace } from '../../core/inspect/snap-place';
import { measuringIndex } from '../picture/measuring-index';
import type { App } from './app-store';
import { setInspect } from './set-inspect';

/** Takes a pick: where it holds on to something there, else where it is. The last pick of a tool makes the reading. */
export function pickPoint(app: App, snap: SnapPlace | null, place: Point): void {
  const { inspect } = app.store.getState();
  const { tool, picks } = inspect;
  if (!tool) return;
  const at = snap?.at ?? place;
  const single = tool === 'radius' || tool === 'gap';
  if (single) {
    const reading = tool === 'radius' ? radiusAt(app, snap) : gapAt(app, at);
    if (reading) setInspect(app, { reading, picks: [] });
    else
      app.store.setState({
        said: tool === 'radius' ? 'Pick a place on an arc' : 'Pick a place on the punch or the die',
      });
    return;
  }
  const all = [...picks, at];
  const reading = readingOf(tool, all);
  setInspect(app, reading ? { reading, picks: [] } : { reading: null, picks: all });
}

function readingOf(tool: Reading['kind'], picks: readonly Point[]): Reading | null {
  const [first, second, third] = picks;
  if (tool === 'distance' && first && second) return { kind: 'distance', from: first, to: second };
  if (tool === 'angle' && first && second && third)
    return { kind: 'angle', at: first, first: second, second: third };
  return null;
}

function radiusAt(app: App, snap: SnapPlace | null): Reading | null {
  const { made } = app.store.getState();
  if (!made || !snap) return null;
  const { table } = measuringIndex(made.plan);
  const radius = num(table.radius, snap.segment);
  if (radius === 0) return null;
  const centre = { x: num(table.cx, snap.segment), y: num(table.cy, snap.segment) };
  const away = Math.hypot(snap.at.x - centre.x, snap.at.y - centre.y);
  const at =
    away > 0
      ? {
          x: centre.x + ((snap.at.x - centre.x) * radius) / away,
          y: centre.y + ((snap.at.y - centre.y) * radius) / away,
        }
      : { x: num(table.x0, snap.segment), y: num(table.y0, snap.segment) };
  return { kind: 'radius', centre, at };
}

/** From the nearer member's edge as cut to the other's, square to it. */
function gapAt(app: App, place: Point): Reading | null {
  const { made } = app.store.getState();
  const edges = (made?.plan.pairs ?? []).flatMap(({ die, punch }) => [
    { edge: die.asCut, other: punch.asCut },
    { edge: punch.asCut, other: die.asCut },
  ]);
  const near = edges
    .filter(({ edge, other }) => edge.length > 0 && other.length > 0)
    .map(({ edge, other }) => ({ foot: deviationAt(referenceOf(edge, 'inside'), place).foot, other }))
    .map(({ foot, other }) => ({ foot, other, distance: Math.hypot(foot.x - place.x, foot.y - place.y) }));
  const [first, ...others] = near;
  if (!first) return null;
  const nearest = others.reduce((best, one) => (one.distance < best.distance ? one : best), first);
  const to = deviationAt(referenceOf(nearest.other, 'inside'), nearest.foot).foot;
  return { kind: 'gap', from: nearest.foot, to };
}
