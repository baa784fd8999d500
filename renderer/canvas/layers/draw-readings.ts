import type { Point } from '../../../core/geometry/contour';
import { valueOfReading, type Reading } from '../../../core/inspect/reading';
import type { SnapPlace } from '../../../core/inspect/snap-place';
import { degrees, formatLength, type DisplayUnit } from '../../../core/units';
import { toScreen } from '../../state/viewport';
import type { View } from '../drawing-space';
import { label } from './draw-clearance';

/** A reading: its lines, its points and its value. */
export function drawReading(
  context: CanvasRenderingContext2D,
  reading: Reading,
  view: View,
  unit: DisplayUnit,
): void {
  const on = (point: Point) => toScreen(view.viewport, view.size, point);
  const [first, second, third] = pointsOf(reading).map(on);
  if (!first || !second) return;
  context.setLineDash([]);
  context.strokeStyle = view.palette.focus;
  context.fillStyle = view.palette.focus;
  context.lineWidth = 1.5;
  context.beginPath();
  if (third) {
    context.moveTo(second.x, second.y);
    context.lineTo(first.x, first.y);
    context.lineTo(third.x, third.y);
    context.stroke();
    drawAngle(context, first, second, third);
  } else {
    context.moveTo(first.x, first.y);
    context.lineTo(second.x, second.y);
    context.stroke();
  }
  for (const point of [first, second, third]) if (point) dot(context, point);
  const { value, kind } = valueOfReading(reading);
  const words = kind === 'angle' ? `${degrees(value).toFixed(3)}°` : formatLength(value, unit);
  const at = third
    ? { x: first.x + 34, y: first.y - 18 }
    : { x: (first.x + second.x) / 2, y: (first.y + second.y) / 2 - 14 };
  label(context, reading.kind === 'radius' ? `R ${words}` : words, at, view);
}

/** Points picked so far, and what the pointer holds on to. */
export function drawPicking(
  context: CanvasRenderingContext2D,
  picks: readonly Point[],
  snap: SnapPlace | null,
  view: View,
): void {
  context.setLineDash([]);
  context.strokeStyle = view.palette.focus;
  context.fillStyle = view.palette.focus;
  context.lineWidth = 1.5;
  for (const pick of picks) dot(context, toScreen(view.viewport, view.size, pick));
  if (!snap) return;
  const at = toScreen(view.viewport, view.size, snap.at);
  const last = picks.at(-1);
  if (last) {
    const from = toScreen(view.viewport, view.size, last);
    context.setLineDash([4, 4]);
    context.beginPath();
    context.moveTo(from.x, from.y);
    context.lineTo(at.x, at.y);
    context.stroke();
    context.setLineDash([]);
  }
  context.strokeRect(at.x - 5, at.y - 5, 10, 10);
  label(context, snapWords[snap.kind], { x: at.x, y: at.y + 20 }, view);
}

const snapWords: Readonly<Record<SnapPlace['kind'], string>> = {
  end: 'end',
  middle: 'middle',
  centre: 'centre',
  tangent: 'tangent',
  square: 'square to it',
  edge: 'on the edge',
};

function pointsOf(reading: Reading): readonly Point[] {
  switch (reading.kind) {
    case 'distance':
    case 'gap':
      return [reading.from, reading.to];
    case 'radius':
      return [reading.centre, reading.at];
    case 'angle':
      return [reading.at, reading.first, reading.second];
  }
}

function drawAngle(context: CanvasRenderingContext2D, at: Point, first: Point, second: Point): void {
  const from = Math.atan2(first.y - at.y, first.x - at.x);
  const to = Math.atan2(second.y - at.y, second.x - at.x);
  const turn = Math.atan2(Math.sin(to - from), Math.cos(to - from));
  context.beginPath();
  context.arc(at.x, at.y, 22, from, from + turn, turn < 0);
  context.stroke();
}

function dot(context: CanvasRenderingContext2D, at: Point): void {
  context.beginPath();
  context.arc(at.x, at.y, 3, 0, 2 * Math.PI);
  context.fill();
}
