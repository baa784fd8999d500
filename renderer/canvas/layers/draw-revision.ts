import { toScreen } from '../../state/viewport';
import { inDrawingSpace, type View } from '../drawing-space';
import type { RevisionScene } from '../inspect-scene';
import { strokeChunks } from '../path-chunk';

/** Both outlines over each other, what was added and what was taken away filled, each place ringed with its number. */
export function drawRevision(
  context: CanvasRenderingContext2D,
  scene: RevisionScene,
  view: View,
  pointed: number | null,
): void {
  const { palette, viewport, size } = view;
  for (const { place, chunk } of scene.places) {
    if (!chunk) continue;
    context.globalAlpha = 0.45;
    context.fillStyle = place.change === 'added' ? palette.wide : palette.punch;
    inDrawingSpace(context, view, chunk.origin, () => context.fill(chunk.path, 'evenodd'));
    context.globalAlpha = 1;
  }
  strokeChunks(context, view, scene.older, { color: palette.inkSoft, width: 1.5, dash: [6, 4] });
  strokeChunks(context, view, scene.newer, { color: palette.ink, width: 1.75 });
  context.setLineDash([]);
  for (const [k, { place }] of scene.places.entries()) {
    const { minX, minY, maxX, maxY } = place.box;
    const at = toScreen(viewport, size, { x: (minX + maxX) / 2, y: (minY + maxY) / 2 });
    const reach = Math.max(12, (Math.hypot(maxX - minX, maxY - minY) / 2) * viewport.scale + 6);
    context.strokeStyle = k === pointed ? palette.focus : palette.decide;
    context.lineWidth = k === pointed ? 3 : 1.5;
    context.beginPath();
    context.arc(at.x, at.y, reach, 0, 2 * Math.PI);
    context.stroke();
    context.fillStyle = palette.ink;
    context.font = '600 12px system-ui, sans-serif';
    context.textAlign = 'left';
    context.textBaseline = 'middle';
    context.fillText(String(k + 1), at.x + reach * Math.SQRT1_2 + 3, at.y - reach * Math.SQRT1_2 - 3);
  }
}
