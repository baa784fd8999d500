import type { Drawing, Repair } from '../../core/drawing/drawing';
import type { Plan } from '../../core/plan';
import { drawingIndex } from '../picture/drawing-index';
import { planIndex } from '../picture/plan-index';
import { targetOfRepair, type Target } from '../state/target';
import { toDrawing, toScreen, type ScreenPoint, type Size, type Viewport } from '../state/viewport';
import { badgeRadius, type Mark } from './mark-layout';

/** Pixels from a line at which the pointer still means it. */
export const grasp = 7;

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
  const member = planIndex(plan).nearest(at, reach);
  if (member) return { kind: 'member', id: member.segment.member.id };
  const contour = drawingIndex(plan.drawing).leftOut.nearest(at, reach);
  return contour && { kind: 'contour', id: contour.segment.contourId };
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
  const at = toDrawing(viewport, size, pointer);
  const contour = drawingIndex(drawing).all.nearest(at, grasp / viewport.scale);
  return contour && { kind: 'contour', id: contour.segment.contourId };
}

const isNear = (a: ScreenPoint, b: ScreenPoint, distance: number): boolean =>
  Math.hypot(a.x - b.x, a.y - b.y) <= distance;
