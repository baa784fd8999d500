import type { CornerName } from '../../state/app-state';
import { toScreen } from '../../state/viewport';
import type { View } from '../drawing-space';

/** A square about a corner: thin while it is pointed at, heavy while its rules are open. */
export function drawCorner(
  context: CanvasRenderingContext2D,
  corner: CornerName | null,
  view: View,
  isOpen: boolean,
): void {
  if (!corner) return;
  const at = toScreen(view.viewport, view.size, corner);
  context.strokeStyle = view.palette.focus;
  context.lineWidth = isOpen ? 2.5 : 1.5;
  context.setLineDash([]);
  context.strokeRect(at.x - halfSide, at.y - halfSide, 2 * halfSide, 2 * halfSide);
}

/** Pixels. */
const halfSide = 7;
