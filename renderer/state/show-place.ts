import type { Point } from '../../core/geometry/contour';
import type { App } from './app-store';
import { framed } from './viewport';

/** Frames a place as close as a clearance is worth looking at, or closer if it is looked at so already. */
export function showPlace({ store }: App, { x, y }: Point, reach = 0.5): void {
  store.setState(({ canvasSize }) => ({ viewport: framed({ x, y, reach }, canvasSize) }));
}
