import type { Target } from '../../state/target';
import { chunksOfContour, type ContoursScene, type LinesScene } from '../drawing-scene';
import type { View } from '../drawing-space';
import { strokeChunks } from '../path-chunk';

/** A contour, a layer or a colour that is picked out or pointed at. */
export function drawPointedLines(
  context: CanvasRenderingContext2D,
  lines: LinesScene | null,
  contours: ContoursScene | null,
  view: View,
  target: Target | null,
): void {
  if (target?.kind === 'contour' && contours) {
    const chunks = chunksOfContour(contours.drawing, target.id);
    context.globalAlpha = 0.25;
    strokeChunks(context, view, chunks, { color: view.palette.focus, width: 9 });
    context.globalAlpha = 1;
    strokeChunks(context, view, chunks, { color: view.palette.focus, width: 2 });
  }
  if ((target?.kind !== 'layer' && target?.kind !== 'colour') || !lines) return;
  for (const { chunks, layer, colour } of lines.lines) {
    const isMeant = target.kind === 'layer' ? layer === target.layer : colour === target.colour;
    if (isMeant) strokeChunks(context, view, chunks, { color: view.palette.focus, width: 2.5 });
  }
}
