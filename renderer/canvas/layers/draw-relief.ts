import type { PicturePart } from '../../state/app-state';
import type { View } from '../drawing-space';
import { strokeChunks } from '../path-chunk';
import type { Scene } from '../scene';

/** What lies in the plane of the wire's upper end: the opening at the exit face in dashes and dots, the wire in dots. */
export function drawRelief(
  context: CanvasRenderingContext2D,
  scene: Scene,
  view: View,
  isShown: (part: PicturePart) => boolean,
): void {
  if (!isShown('die')) return;
  for (const { exit, upper } of scene.members) {
    strokeChunks(context, view, exit, { color: view.palette.exit, width: 1.25, dash: [10, 3, 2, 3] });
    if (!isShown('path')) continue;
    context.globalAlpha = 0.6;
    strokeChunks(context, view, upper, { color: view.palette.ink, width: 0.75, dash: [1.5, 3] });
    context.globalAlpha = 1;
  }
}
