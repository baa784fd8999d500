import type { Point } from '../../core/geometry/contour';
import { clearanceAtStation, stationNear } from '../../core/inspect/probe-clearance';
import type { App } from '../state/app-store';
import { pickPoint } from '../state/pick-point';
import { setInspect } from '../state/set-inspect';
import { snapAt } from '../state/snap-at';
import { toDrawing, type ScreenPoint } from '../state/viewport';

/** Pixels within which the probe holds on to the punch. */
const probeGrasp = 40;

/** Pointing: the probe runs along the punch, or the pick finds what it can hold on to. */
export function pointInspected(app: App, at: ScreenPoint): void {
  const { inspect, viewport, canvasSize } = app.store.getState();
  const place = toDrawing(viewport, canvasSize, at);
  if (inspect.section === 'clearance') {
    const station = probed(app, place);
    if (station !== inspect.pointedStation) setInspect(app, { pointedStation: station });
  } else if (inspect.section === 'measuring' && inspect.tool) {
    setInspect(app, { snap: snapAt(app, place) });
  }
}

/** A click holds the probe where it is, or picks a point. */
export function clickInspected(app: App, at: ScreenPoint): void {
  const { inspect, viewport, canvasSize } = app.store.getState();
  const place = toDrawing(viewport, canvasSize, at);
  if (inspect.section === 'clearance') setInspect(app, { heldStation: probed(app, place) });
  else if (inspect.section === 'measuring' && inspect.tool) pickPoint(app, snapAt(app, place), place);
}

/** The station of the punch near a place, null in the open. */
function probed(app: App, place: Point): number | null {
  const { inspect, viewport } = app.store.getState();
  const { clearance } = inspect;
  const station = clearance && stationNear(clearance.punch, place);
  if (!clearance || station === null) return null;
  const { at } = clearanceAtStation(clearance.map, clearance.punch, station);
  return Math.hypot(at.x - place.x, at.y - place.y) * viewport.scale <= probeGrasp ? station : null;
}
