import type { Point } from '../../core/geometry/contour';
import { snapPlace, type SnapPlace } from '../../core/inspect/snap-place';
import { measuringIndex } from '../picture/measuring-index';
import type { App } from './app-store';

/** Pixels within which a picked point holds on to something. */
const grasp = 12;

/** What a point picked at a place of the drawing would hold on to; null in the open. */
export function snapAt({ store }: App, place: Point): SnapPlace | null {
  const { made, inspect, viewport } = store.getState();
  if (!made) return null;
  const from = inspect.tool === 'distance' ? (inspect.picks.at(-1) ?? null) : null;
  return snapPlace(measuringIndex(made.plan), place, grasp / viewport.scale, from);
}
