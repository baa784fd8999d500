import type { Point } from '../../../core/geometry/contour';
import { toScreen } from '../../state/viewport';
import { inDrawingSpace, type View } from '../drawing-space';
import type { ClearanceScene } from '../inspect-scene';
import { strokeChunks } from '../path-chunk';

/** What a lamp behind the pair would show: the gap bright in the dark, as wide as it is exaggerated; contacts drawn and ringed. */
export function drawLight(context: CanvasRenderingContext2D, scene: ClearanceScene, view: View): void {
  context.fillStyle = dark;
  context.fillRect(0, 0, view.size.width, view.size.height);
  for (const [chunk, colour] of [
    [scene.opening, lamp],
    [scene.body, dark],
  ] as const) {
    if (!chunk) continue;
    context.fillStyle = colour;
    inDrawingSpace(context, view, chunk.origin, () => context.fill(chunk.path, 'evenodd'));
  }
  context.fillStyle = lamp;
  // A fine edge of the same light: polygons that are only filled leave a dark hair where they meet.
  context.strokeStyle = lamp;
  context.lineWidth = 0.6;
  for (const band of scene.light.light) fillPolygon(context, band, view);
  for (const { band, chunks } of scene.stretches)
    if (band === 'contact') strokeChunks(context, view, chunks, { color: contact, width: 4 });
  context.setLineDash([]);
  for (const { at } of scene.light.contacts) {
    const place = toScreen(view.viewport, view.size, at);
    context.strokeStyle = contact;
    context.lineWidth = 2;
    context.beginPath();
    context.arc(place.x, place.y, 9, 0, 2 * Math.PI);
    context.moveTo(place.x - 13, place.y);
    context.lineTo(place.x + 13, place.y);
    context.stroke();
  }
}

/** A lamp in a dark room, in both themes. */
const dark = '#101214';
const lamp = '#ffe6a0';
const contact = '#ff8f93';

function fillPolygon(context: CanvasRenderingContext2D, points: readonly Point[], view: View): void {
  context.beginPath();
  for (const point of points) {
    const at = toScreen(view.viewport, view.size, point);
    context.lineTo(at.x, at.y);
  }
  context.closePath();
  context.fill();
  context.stroke();
}
