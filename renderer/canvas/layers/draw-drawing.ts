import type { Pane, PicturePart } from '../../state/app-state';
import type { View } from '../drawing-space';
import type { ContoursScene, LinesScene } from '../drawing-scene';
import { strokeChunks } from '../path-chunk';

/**
 * Everything that is drawn and shown, faint, under all the rest: also what is no edge of the part. Stronger where it is all
 * there is.
 */
export function drawLines(
  context: CanvasRenderingContext2D,
  scene: LinesScene,
  view: View,
  isAll: boolean,
): void {
  const stroke = isAll
    ? { color: view.palette.inkSoft, width: 1.25 }
    : { color: view.palette.faint, width: 0.75 };
  for (const { chunks, hidden, isFilling } of scene.lines)
    if (hidden === null && !isFilling) strokeChunks(context, view, chunks, stroke);
}

/** The contours of the drawing: what is taken in ink where it is looked at, else faint; what is left out dotted. */
export function drawContours(
  context: CanvasRenderingContext2D,
  scene: ContoursScene,
  view: View,
  pane: Pane,
  isShown: (part: PicturePart) => boolean,
): void {
  const { faint, ink, inkSoft } = view.palette;
  const isSubject = pane === 'drawing';
  if (isShown(isSubject ? 'left out' : 'drawing'))
    strokeChunks(context, view, scene.leftOut, {
      color: isSubject ? inkSoft : faint,
      width: 1.25,
      dash: dots,
    });
  if (isShown(isSubject ? 'edges' : 'drawing'))
    strokeChunks(context, view, scene.taken, {
      color: isSubject ? ink : faint,
      width: isSubject ? 1.75 : 1,
    });
}

/** Dotted: left out; the die's line is solid and the punch's dashed. */
const dots = [1.5, 4] as const;
