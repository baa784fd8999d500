import { toScreen } from '../../state/viewport';
import { boxesMeet, inDrawingSpace, type View } from '../drawing-space';
import type { PathChunk } from '../path-chunk';
import type { Scene } from '../scene';

/** Stock that the wire can't reach: hatched where it is large enough to see the hatching, filled where it is not. */
export function drawRemainders(context: CanvasRenderingContext2D, scene: Scene, view: View): void {
  for (const { remainders } of scene.members) {
    for (const chunk of remainders) {
      if (boxesMeet(chunk.box, view.visible)) drawRemainder(context, chunk, view);
    }
  }
}

/** Pixels between hatch lines. */
const spacing = 6;

function drawRemainder(
  context: CanvasRenderingContext2D,
  { box, origin, path }: PathChunk,
  view: View,
): void {
  const { scale } = view.viewport;
  const color = view.palette.remainder;
  inDrawingSpace(context, view, origin, () => {
    context.globalAlpha = 0.2;
    context.fillStyle = color;
    context.fill(path);
    context.globalAlpha = 1;
    context.strokeStyle = color;
    context.lineWidth = 1.25 / scale;
    context.stroke(path);
  });
  if (Math.max(box.maxX - box.minX, box.maxY - box.minY) * scale < 2 * spacing) return;
  context.save();
  clipInPixels(context, view, origin, path);
  hatch(context, box, view, color);
  context.restore();
}

/** Clips to a path in the drawing's space and leaves the canvas in pixels, so that the hatching keeps its spacing. */
function clipInPixels(
  context: CanvasRenderingContext2D,
  view: View,
  origin: { x: number; y: number },
  path: Path2D,
): void {
  const at = toScreen(view.viewport, view.size, origin);
  const placed = new Path2D();
  const { scale } = view.viewport;
  placed.addPath(path, { a: scale, b: 0, c: 0, d: -scale, e: at.x, f: at.y });
  context.clip(placed);
}

function hatch(context: CanvasRenderingContext2D, box: PathChunk['box'], view: View, color: string): void {
  const corner = toScreen(view.viewport, view.size, { x: box.minX, y: box.maxY });
  const opposite = toScreen(view.viewport, view.size, { x: box.maxX, y: box.minY });
  const left = Math.max(corner.x, 0);
  const top = Math.max(corner.y, 0);
  const right = Math.min(opposite.x, view.size.width);
  const bottom = Math.min(opposite.y, view.size.height);
  const height = bottom - top;
  context.strokeStyle = color;
  context.lineWidth = 1;
  context.beginPath();
  // Anchored to the corner of the box, so that the hatching moves with the drawing.
  const first = corner.x + Math.floor((left - height - corner.x) / spacing) * spacing;
  for (let x = first; x < right; x += spacing) {
    context.moveTo(x, bottom);
    context.lineTo(x + height, top);
  }
  context.stroke();
}
