import type { Box } from '../../core/geometry/contour';

/** A place in the drawing, mm, y up. */
export interface DrawingPoint {
  readonly x: number;
  readonly y: number;
  readonly space?: 'drawing';
}

/** A place on the canvas, CSS pixels from its top left corner, y down. */
export interface ScreenPoint {
  readonly x: number;
  readonly y: number;
  readonly space?: 'screen';
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** What the canvas shows: the drawing point in its middle and how many pixels a mm takes. */
export interface Viewport {
  readonly centre: DrawingPoint;
  readonly scale: number;
}

/** From a building's plan to a twentieth of a µm a pixel. */
export const scaleLimits = { least: 0.02, greatest: 20_000 } as const;

/** Room left around what is fitted, as a share of the canvas. */
const margin = 0.08;

export const toScreen = (view: Viewport, size: Size, point: DrawingPoint): ScreenPoint => ({
  x: size.width / 2 + (point.x - view.centre.x) * view.scale,
  y: size.height / 2 - (point.y - view.centre.y) * view.scale,
});

export const toDrawing = (view: Viewport, size: Size, point: ScreenPoint): DrawingPoint => ({
  x: view.centre.x + (point.x - size.width / 2) / view.scale,
  y: view.centre.y - (point.y - size.height / 2) / view.scale,
});

/** Zoomed by `factor` about a point of the canvas, which keeps its place in the drawing. */
export function zoomedAbout(view: Viewport, size: Size, about: ScreenPoint, factor: number): Viewport {
  const scale = clampScale(view.scale * factor);
  const held = toDrawing(view, size, about);
  return {
    scale,
    centre: {
      x: held.x - (about.x - size.width / 2) / scale,
      y: held.y + (about.y - size.height / 2) / scale,
    },
  };
}

/** Moved with the pointer by so many pixels. */
export const panned = (view: Viewport, byX: number, byY: number): Viewport => ({
  ...view,
  centre: { x: view.centre.x - byX / view.scale, y: view.centre.y + byY / view.scale },
});

/** The view that shows a whole box; a box without width or height is shown at 1 mm. */
export function fitted(box: Box, size: Size): Viewport {
  const width = Math.max(box.maxX - box.minX, 0);
  const height = Math.max(box.maxY - box.minY, 0);
  const room = 1 - 2 * margin;
  const across = width > 0 ? (size.width * room) / width : Infinity;
  const up = height > 0 ? (size.height * room) / height : Infinity;
  const scale = Math.min(across, up);
  return {
    centre: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 },
    scale: clampScale(Number.isFinite(scale) ? scale : Math.min(size.width, size.height) * room),
  };
}

/** The view of a place and what matters around it: `reach` is a half width, mm. */
export function framed(place: { x: number; y: number; reach: number }, size: Size): Viewport {
  const half = Math.max(place.reach, 0.02);
  return fitted(
    { minX: place.x - half, minY: place.y - half, maxX: place.x + half, maxY: place.y + half },
    size,
  );
}

/** The part of the drawing that the canvas shows. */
export function visibleBox(view: Viewport, size: Size): Box {
  const halfWidth = size.width / 2 / view.scale;
  const halfHeight = size.height / 2 / view.scale;
  return {
    minX: view.centre.x - halfWidth,
    minY: view.centre.y - halfHeight,
    maxX: view.centre.x + halfWidth,
    maxY: view.centre.y + halfHeight,
  };
}

const clampScale = (scale: number): number =>
  Math.min(scaleLimits.greatest, Math.max(scaleLimits.least, scale));
