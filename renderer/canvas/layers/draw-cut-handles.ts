import type { Point } from '../../../core/geometry/contour';
import type { Block } from '../../../core/plan';
import { cutPlaces } from '../../picture/cut-places';
import { sameCut, type CutDrag, type CutHandle, type CutName } from '../../state/cut-name';
import { toScreen } from '../../state/viewport';
import type { View } from '../drawing-space';
import type { Scene } from '../scene';

/** What can be taken hold of of a cut: a ring about its hole, a grip on its tab; heavy where its values are open. */
export function drawCutHandles(
  context: CanvasRenderingContext2D,
  scene: Scene,
  view: View,
  pointed: CutHandle | null,
  open: CutName | null,
): void {
  for (const place of cutPlaces(scene.plan)) {
    const isOpen = sameCut(place, open);
    if (!isOpen && !sameCut(place, pointed)) continue;
    context.strokeStyle = view.palette.focus;
    context.fillStyle = view.palette.paper;
    context.lineWidth = isOpen ? 2.5 : 1.5;
    context.setLineDash([]);
    const { start } = place;
    if (start && (isOpen || pointed?.part === 'hole')) {
      ring(context, view, start, (start.diameter / 2) * view.viewport.scale + 4);
    }
    if (isOpen || pointed?.part === 'place') ring(context, view, place.at, 6);
  }
}

/** A cut on its way: hole, lead-ins and tabs as they would lie, or a crossed hole where it may not be. */
export function drawCutDrag(context: CanvasRenderingContext2D, drag: CutDrag | null, view: View): void {
  if (!drag) return;
  const { layout, because, at } = drag;
  context.setLineDash([]);
  context.lineWidth = 2;
  if (because !== null) {
    context.strokeStyle = view.palette.stop;
    ring(context, view, at, 8);
    const { x, y } = toScreen(view.viewport, view.size, { x: at.x, y: at.y });
    line(context, [
      { x: x - 5, y: y - 5 },
      { x: x + 5, y: y + 5 },
    ]);
    line(context, [
      { x: x - 5, y: y + 5 },
      { x: x + 5, y: y - 5 },
    ]);
    return;
  }
  context.strokeStyle = view.palette.focus;
  const screen = (point: Point) => toScreen(view.viewport, view.size, { x: point.x, y: point.y });
  for (const { start, begin } of layout.stretches) {
    if (!start) continue;
    ring(context, view, start, (start.diameter / 2) * view.viewport.scale);
    line(context, [start, begin.wait, begin.at].map(screen));
  }
  context.lineWidth = 4;
  for (const { from, to } of layout.tabs) line(context, [from, to].map(screen));
}

/** The outline of a block with its clamp zones. */
export function drawBlock(context: CanvasRenderingContext2D, block: Block, view: View): void {
  const box = ({ minX, minY, maxX, maxY }: Block['outline']) => {
    const low = toScreen(view.viewport, view.size, { x: minX, y: minY });
    const high = toScreen(view.viewport, view.size, { x: maxX, y: maxY });
    return [low.x, high.y, high.x - low.x, low.y - high.y] as const;
  };
  context.strokeStyle = view.palette.ink;
  context.globalAlpha = 0.6;
  context.lineWidth = 1;
  context.setLineDash([12, 4, 2, 4]);
  context.strokeRect(...box(block.outline));
  context.fillStyle = view.palette.ink;
  context.globalAlpha = 0.12;
  for (const clamp of block.clamps) context.fillRect(...box(clamp));
  context.globalAlpha = 1;
  context.setLineDash([]);
}

function ring(context: CanvasRenderingContext2D, view: View, about: Point, radius: number): void {
  const { x, y } = toScreen(view.viewport, view.size, { x: about.x, y: about.y });
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  context.stroke();
}

function line(context: CanvasRenderingContext2D, points: readonly Point[]): void {
  context.beginPath();
  for (const { x, y } of points) context.lineTo(x, y);
  context.stroke();
}
