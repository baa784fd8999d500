import type { Box, Point } from '../../core/geometry/contour';
import { toScreen, visibleBox, type Size, type Viewport } from '../state/viewport';
import type { Palette } from './palette';

/** What every layer needs to draw. */
export interface View {
  readonly viewport: Viewport;
  readonly size: Size;
  /** The part of the drawing on the canvas. */
  readonly visible: Box;
  readonly palette: Palette;
}

export const viewOf = (viewport: Viewport, size: Size, palette: Palette): View => ({
  viewport,
  size,
  visible: visibleBox(viewport, size),
  palette,
});

/** Draws in mm, y up, measured from `origin`. Line widths and dashes must be divided by the scale. */
export function inDrawingSpace(
  context: CanvasRenderingContext2D,
  view: View,
  origin: Point,
  draw: () => void,
): void {
  const at = toScreen(view.viewport, view.size, origin);
  context.save();
  context.translate(at.x, at.y);
  context.scale(view.viewport.scale, -view.viewport.scale);
  draw();
  context.restore();
}

export const boxesMeet = (a: Box, b: Box): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
