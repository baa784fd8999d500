import type { Drawing, Repair } from '../../core/drawing/drawing';
import type { Vertex } from '../../core/geometry/contour';
import type { Plan } from '../../core/plan';
import { distanceToSegment } from '../picture/distance-to-segment';
import { drawingIndex } from '../picture/drawing-index';
import { planIndex } from '../picture/plan-index';
import { targetOfRepair, type Target } from '../state/target';
import { toDrawing, toScreen, type ScreenPoint, type Size, type Viewport } from '../state/viewport';
import { badgeRadius, type Mark } from './mark-layout';

/** Pixels from a line at which the pointer still means it. */
const grasp = 7;

/** What the pointer means: a mark first, then the nearest member's contour or a contour that is left out; null in the open. */
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
  const reach = grasp / viewport.scale;
  const at = toDrawing(viewport, size, pointer);
  const around = boxAround(at, reach);
  const member = nearest(planIndex(plan).segmentsIn(around), at, reach);
  if (member) return { kind: 'member', id: member.member.id };
  const aside = drawingIndex(plan.drawing)
    .segmentsIn(around)
    .filter(({ isTaken }) => !isTaken);
  const contour = nearest(aside, at, reach);
  return contour && { kind: 'contour', id: contour.contourId };
}

/** The same where the drawing itself is looked at: a repair first, then the nearest contour, taken or left out. */
export function hitDrawing(
  drawing: Drawing,
  repairs: readonly Repair[],
  viewport: Viewport,
  size: Size,
  pointer: ScreenPoint,
): Target | null {
  const repair = repairs.find(({ place }) => isNear(toScreen(viewport, size, place), pointer, grasp));
  if (repair) return targetOfRepair(repair);
  const reach = grasp / viewport.scale;
  const at = toDrawing(viewport, size, pointer);
  const contour = nearest(drawingIndex(drawing).segmentsIn(boxAround(at, reach)), at, reach);
  return contour && { kind: 'contour', id: contour.contourId };
}

function nearest<S extends { readonly from: Vertex; readonly to: Vertex }>(
  segments: readonly S[],
  at: { x: number; y: number },
  reach: number,
): S | null {
  let best: S | null = null;
  let least = reach;
  for (const segment of segments) {
    const distance = distanceToSegment(at, segment.from, segment.to);
    if (distance > least || (best && distance === least)) continue;
    best = segment;
    least = distance;
  }
  return best;
}

const boxAround = ({ x, y }: { x: number; y: number }, reach: number) => ({
  minX: x - reach,
  minY: y - reach,
  maxX: x + reach,
  maxY: y + reach,
});

const isNear = (a: ScreenPoint, b: ScreenPoint, distance: number): boolean =>
  Math.hypot(a.x - b.x, a.y - b.y) <= distance;
