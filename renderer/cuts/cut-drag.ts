import { noChoice } from '../../core/cut-settings';
import type { Point } from '../../core/geometry/contour';
import { cutOfPlan, layoutOfCut } from '../../core/layout-of-cut';
import type { DrawnHole } from '../../core/plan';
import { jobOf, type AppState } from '../state/app-state';
import type { App } from '../state/app-store';
import { setCut, withChange, type CutChange } from '../state/edits/set-cut';
import { editJob } from '../state/job-edit';
import { toDrawing, toScreen, type ScreenPoint } from '../state/viewport';
import { cutPlaces } from '../picture/cut-places';
import type { CutDrag, CutHandle } from '../state/cut-name';

/** Pixels at which the pointer still means a handle, and from which a hole of the drawing draws a start hole to it. */
const grasp = 9;
const snap = 10;

/** The handle under the pointer, the nearest; null where there is none, or paths are not shown. */
export function cutHandleAt(state: AppState, pointer: ScreenPoint): CutHandle | null {
  const { made, viewport, canvasSize, hidden, pane } = state;
  if (!made || pane !== 'review' || hidden.includes('path')) return null;
  let best: { handle: CutHandle; distance: number } | null = null;
  for (const { cutId, stretch, role, start, at } of cutPlaces(made.plan)) {
    if (hidden.includes(role)) continue;
    const parts = [
      ...(start && start.kind !== 'edge' ? [{ part: 'hole' as const, point: start }] : []),
      { part: 'place' as const, point: at },
    ];
    for (const { part, point } of parts) {
      const screen = toScreen(viewport, canvasSize, { x: point.x, y: point.y });
      const distance = Math.hypot(screen.x - pointer.x, screen.y - pointer.y);
      const reach = part === 'hole' ? Math.max(grasp, ((start?.diameter ?? 0) / 2) * viewport.scale) : grasp;
      if (distance <= reach && (best === null || distance < best.distance)) {
        best = { handle: { cutId, stretch, part }, distance };
      }
    }
  }
  return best?.handle ?? null;
}

/** Takes the handle to the pointer and says whether it may be there. */
export function dragCut(app: App, handle: CutHandle, pointer: ScreenPoint): void {
  const state = app.store.getState();
  const job = jobOf(state);
  const owned = state.made && cutOfPlan(state.made.plan, handle.cutId);
  if (!job || !state.made || !owned) return;
  const { plan } = state.made;
  const pointed = toDrawing(state.viewport, state.canvasSize, pointer);
  const holes = plan.blocks.find(({ memberIds }) => memberIds.includes(owned.member.id))?.sites[
    owned.member.id
  ];
  const at =
    handle.part === 'hole' ? snapped(pointed, holes?.drawnHoles ?? [], snap / state.viewport.scale) : pointed;
  const choice = withChange(job.cuts[handle.cutId] ?? noChoice, changeTo(handle, at));
  const layout = layoutOfCut(plan, job, owned, choice);
  if (!layout) return;
  const trouble = layout.troubles.find(({ stretch }) => stretch === handle.stretch);
  app.store.setState({ draggedCut: { ...handle, at, layout, because: trouble?.because ?? null } });
}

/** Puts the handle where it is, if it may be there; else it stays where it was, and the status line says why. */
export function dropCut(app: App): void {
  const { draggedCut } = app.store.getState();
  if (!draggedCut) return;
  const { cutId, because, at } = draggedCut;
  app.store.setState({ draggedCut: null });
  if (because !== null) app.store.setState({ said: refusal(draggedCut) });
  else editJob(app, setCut, { cutId, ...changeTo(draggedCut, at) });
}

/** "Not there: too near the path: …". */
export const refusal = ({ because }: CutDrag): string => `Not there: ${because ?? ''}`;

const changeTo = ({ stretch, part }: CutHandle, { x, y }: Point): Omit<CutChange, 'cutId'> => ({
  stretch: { number: stretch, change: part === 'hole' ? { hole: { x, y } } : { place: { x, y } } },
});

function snapped(at: Point, holes: readonly DrawnHole[], reach: number): Point {
  const near = holes.find(({ x, y }) => Math.hypot(x - at.x, y - at.y) <= reach);
  return near ? { x: near.x, y: near.y } : at;
}
