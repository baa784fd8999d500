import type { Plan } from '../../core/plan';
import { distanceToSegment } from '../picture/distance-to-segment';
import { planIndex } from '../picture/plan-index';
import type { Target } from '../state/app-state';
import { toDrawing, type ScreenPoint, type Size, type Viewport } from '../state/viewport';
import { badgeRadius, type Mark } from './mark-layout';

/** Pixels from a line at which the pointer still means it. */
const grasp = 7;

/** What the pointer means: a mark first, then the nearest member's contour; null in the open. */
export function hitTest(
  plan: Plan,
  marks: readonly Mark[],
  viewport: Viewport,
  size: Size,
  pointer: ScreenPoint,
): Target | null {
  const mark = marks.find(
    ({ at, foot }) => isNear(at, pointer, badgeRadius + 2) || isNear(foot, pointer, grasp),
  );
  if (mark) return { kind: 'finding', key: mark.finding.key };
  const at = toDrawing(viewport, size, pointer);
  const reach = grasp / viewport.scale;
  const around = { minX: at.x - reach, minY: at.y - reach, maxX: at.x + reach, maxY: at.y + reach };
  let best: { id: string; distance: number } | null = null;
  for (const { member, from, to } of planIndex(plan).segmentsIn(around)) {
    const distance = distanceToSegment(at, from, to);
    if (distance <= reach && (best === null || distance < best.distance)) best = { id: member.id, distance };
  }
  return best && { kind: 'member', id: best.id };
}

const isNear = (a: ScreenPoint, b: ScreenPoint, distance: number): boolean =>
  Math.hypot(a.x - b.x, a.y - b.y) <= distance;
