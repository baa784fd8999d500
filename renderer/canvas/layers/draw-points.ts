import type { Point } from '../../../core/geometry/contour';
import type { ComparedSet } from '../../../core/inspect/compare-set';
import type { zoneLimits } from '../../../core/inspect/profile-tolerance';
import { toScreen } from '../../state/viewport';
import type { View } from '../drawing-space';
import { strokeChunks, type PathChunk } from '../path-chunk';
import { label } from './draw-clearance';

/**
 * The true profile with a whisker at each measured point, square to it and so many times as long; short strokes across
 * it are the limits of the zone, at the same exaggeration.
 */
export function drawPoints(
  context: CanvasRenderingContext2D,
  { comparison }: ComparedSet,
  profile: readonly PathChunk[],
  view: View,
  times: number,
  limits: ZoneLimits,
): void {
  const { palette, viewport, size } = view;
  strokeChunks(context, view, profile, { color: palette.die, width: 1.5 });
  context.setLineDash([]);
  for (const { foot, nx, ny, deviation, passes, isOutlier } of comparison.points) {
    const from = toScreen(viewport, size, foot);
    const to = toScreen(viewport, size, {
      x: foot.x + nx * deviation * times,
      y: foot.y + ny * deviation * times,
    });
    drawLimits(context, foot, { nx, ny }, view, times, limits);
    // Solid and thin where it passes, thick where it fails.
    context.strokeStyle = passes ? palette.settled : palette.punch;
    context.fillStyle = context.strokeStyle;
    context.lineWidth = passes ? 1.5 : 3.5;
    context.beginPath();
    context.moveTo(from.x, from.y);
    context.lineTo(to.x, to.y);
    context.stroke();
    context.beginPath();
    context.arc(to.x, to.y, passes ? 2 : 3, 0, 2 * Math.PI);
    context.fill();
    if (!isOutlier) continue;
    context.lineWidth = 1.5;
    context.beginPath();
    context.arc(to.x, to.y, 8, 0, 2 * Math.PI);
    context.stroke();
  }
}

type ZoneLimits = ReturnType<typeof zoneLimits>;

/** Pixels across the whisker, either side: longer where it is looked at closely. */
const limitStroke = (scale: number): number => Math.min(14, Math.max(4, scale / 20));

function drawLimits(
  context: CanvasRenderingContext2D,
  foot: Point,
  { nx, ny }: { readonly nx: number; readonly ny: number },
  { viewport, size, palette }: View,
  times: number,
  { low, high }: ZoneLimits,
): void {
  const half = limitStroke(viewport.scale);
  context.strokeStyle = palette.inkSoft;
  context.lineWidth = 1;
  context.beginPath();
  for (const limit of [low, high]) {
    const at = toScreen(viewport, size, { x: foot.x + nx * limit * times, y: foot.y + ny * limit * times });
    context.moveTo(at.x - ny * half, at.y - nx * half);
    context.lineTo(at.x + ny * half, at.y + nx * half);
  }
  context.stroke();
}

/** The point that a row of the table is about. */
export function drawPointedPoint(
  context: CanvasRenderingContext2D,
  { comparison }: ComparedSet,
  index: number | null,
  view: View,
): void {
  const point = index === null ? undefined : comparison.points[index];
  if (!point) return;
  const at = toScreen(view.viewport, view.size, point.foot);
  context.setLineDash([]);
  context.strokeStyle = view.palette.focus;
  context.lineWidth = 2;
  context.beginPath();
  context.arc(at.x, at.y, 12, 0, 2 * Math.PI);
  context.stroke();
  label(context, point.id, { x: at.x, y: at.y - 22 }, view);
}
