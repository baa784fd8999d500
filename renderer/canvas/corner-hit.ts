import type { Plan } from '../../core/plan';
import { cornerIndex } from '../picture/corner-index';
import type { CornerName } from '../state/app-state';
import { toDrawing, type ScreenPoint, type Size, type Viewport } from '../state/viewport';

/** Pixels from a corner at which the pointer still means it, and at most where its members stand apart. */
const grasp = 8;
const widestGrasp = 60;

/**
 * The corner that the pointer means; null in the open. Both members have the corner a clearance / sin(angle / 2) from
 * each other, so that seen from very near the pointer may be on either.
 */
export function cornerHit(
  plan: Plan,
  viewport: Viewport,
  size: Size,
  pointer: ScreenPoint,
): CornerName | null {
  const at = toDrawing(viewport, size, pointer);
  const widest = widestGrasp / viewport.scale;
  const around = { minX: at.x - widest, minY: at.y - widest, maxX: at.x + widest, maxY: at.y + widest };
  let best: { name: CornerName; distance: number } | null = null;
  for (const { name, place } of cornerIndex(plan).cornersIn(around)) {
    const distance = Math.hypot(name.x - at.x, name.y - at.y);
    const apart = plan.clearance.perSide / Math.sin(place.angle / 2);
    const reach = Math.min(widest, grasp / viewport.scale + apart);
    if (distance <= reach && (best === null || distance < best.distance)) best = { name, distance };
  }
  return best?.name ?? null;
}
