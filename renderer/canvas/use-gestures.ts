import { useEffect, useRef, type RefObject } from 'react';
import { pathHit } from '../replay/path-index';
import { goToTime } from '../replay/play';
import { cutHandleAt, dragCut, dropCut } from '../cuts/cut-drag';
import { sameCorner } from '../picture/corner-index';
import { drawingOf, type CornerName } from '../state/app-state';
import type { App } from '../state/app-store';
import type { CutHandle } from '../state/cut-name';
import { hoverTarget, selectTarget } from '../state/select-target';
import type { Target } from '../state/target';
import { toggleContour } from '../state/toggle-contour';
import { panned, toDrawing, zoomedAbout, type ScreenPoint } from '../state/viewport';
import { cornerHit } from './corner-hit';
import { watchSpace } from './held-space';
import { grasp, hitDrawing, hitTest } from './hit-test';
import { clickInspected, pointInspected } from './inspect-gestures';
import { layoutMarks } from './mark-layout';

/** Pixels that a press may wander and still be a click. */
const clickSlack = 4;

/**
 * Wheel zooms about the pointer, dragging pans, a click picks out, pointing highlights, arrow keys pan. Where the drawing
 * is looked at, a double click takes a contour or leaves it out. Start holes and tabs are dragged to another place; with
 * Space or the middle button the picture moves from anywhere.
 */
export function useGestures(app: App, frame: RefObject<HTMLDivElement | null>): void {
  const drag = useRef<Drag | null>(null);
  useEffect(() => {
    const element = frame.current;
    if (!element) return undefined;
    const stop = new AbortController();
    const listen = <E extends keyof HTMLElementEventMap>(
      name: E,
      on: (event: HTMLElementEventMap[E]) => void,
    ) => element.addEventListener(name, on, { signal: stop.signal, passive: false });
    const pointOf = (event: MouseEvent): ScreenPoint => {
      const box = element.getBoundingClientRect();
      return { x: event.clientX - box.left, y: event.clientY - box.top };
    };
    const isSpaceHeld = watchSpace(app, element, stop.signal);
    listen('wheel', (event) => {
      event.preventDefault();
      const { viewport, canvasSize } = app.store.getState();
      app.store.setState({
        viewport: zoomedAbout(viewport, canvasSize, pointOf(event), wheelFactor(event)),
      });
    });
    listen('pointerdown', (event) => {
      if (event.button > 1) return;
      element.setPointerCapture(event.pointerId);
      const at = pointOf(event);
      const isPicture = event.button !== 0 || isSpaceHeld();
      const handle = isPicture ? null : cutHandleAt(app.store.getState(), at);
      drag.current = { last: at, wandered: 0, handle, isPicture };
    });
    listen('pointermove', (event) => {
      const at = pointOf(event);
      if (drag.current) {
        dragTo(app, drag.current, at);
        if (drag.current.wandered > clickSlack) element.dataset['dragging'] = '';
      } else {
        point(app, at);
      }
    });
    listen('pointerup', (event) => {
      const { current } = drag;
      const wasClick = current !== null && !current.isPicture && current.wandered <= clickSlack;
      endDrag(element, drag);
      dropCut(app);
      if (wasClick) click(app, pointOf(event));
    });
    listen('dblclick', (event) => {
      const target = targetAt(app, pointOf(event));
      if (app.store.getState().pane === 'drawing' && target?.kind === 'contour')
        toggleContour(app, target.id);
    });
    const giveUp = () => {
      endDrag(element, drag);
      app.store.setState({ draggedCut: null });
    };
    listen('pointercancel', giveUp);
    listen('keydown', (event) => {
      if (event.key === 'Escape' && app.store.getState().draggedCut) {
        event.stopPropagation();
        giveUp();
      }
      const [x, y] = arrowSteps[event.key] ?? [0, 0];
      if ((x === 0 && y === 0) || event.ctrlKey || event.metaKey || event.altKey) return;
      // Where the cut is played, left and right go from move to move; with Shift they move the picture there too.
      if (app.store.getState().pane === 'cut' && x !== 0 && !event.shiftKey) return;
      event.preventDefault();
      app.store.setState(({ viewport, canvasSize }) => ({
        viewport: panned(viewport, x * canvasSize.width, y * canvasSize.height),
      }));
    });
    return () => stop.abort();
  }, [app, frame]);
}

/** The pointer has left the picture. */
export function leavePicture(app: App): void {
  app.store.setState(({ inspect }) => ({
    pointer: null,
    pointedCorner: null,
    pointedCut: null,
    inspect: { ...inspect, pointedStation: null, snap: null },
  }));
  hoverTarget(app, null);
}

interface Drag {
  last: ScreenPoint;
  wandered: number;
  /** What was taken hold of; null: the picture itself. */
  readonly handle: CutHandle | null;
  /** Space or the middle button takes hold of the picture and picks out nothing. */
  readonly isPicture: boolean;
}

/** Shares of the canvas that the picture moves by: the arrow shows what comes into view. */
const arrowSteps: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [0.1, 0],
  ArrowRight: [-0.1, 0],
  ArrowUp: [0, 0.1],
  ArrowDown: [0, -0.1],
};

/** Wheels count pixels, lines or pages (UI Events, deltaMode). A notch of a wheel zooms by about a fifth; a pinch on a trackpad sends small steps with Ctrl and counts for more. */
function wheelFactor(event: WheelEvent): number {
  const perStep = [1, 18, 400][event.deltaMode] ?? 1;
  const pixels = event.deltaY * perStep;
  return Math.exp(-Math.max(-300, Math.min(300, pixels)) * (event.ctrlKey ? 0.01 : 0.0018));
}

function dragTo(app: App, drag: Drag, at: ScreenPoint): void {
  const [byX, byY] = [at.x - drag.last.x, at.y - drag.last.y];
  drag.wandered += Math.hypot(byX, byY);
  drag.last = at;
  if (drag.wandered <= clickSlack) return;
  if (drag.handle) return dragCut(app, drag.handle, at);
  app.store.setState(({ viewport }) => ({ viewport: panned(viewport, byX, byY) }));
}

function endDrag(element: HTMLElement, drag: { current: Drag | null }): void {
  drag.current = null;
  delete element.dataset['dragging'];
}

function point(app: App, at: ScreenPoint): void {
  const { viewport, canvasSize, pointedCorner, pane } = app.store.getState();
  const corner = cornerAt(app, at);
  const handle = cutHandleAt(app.store.getState(), at);
  app.store.setState({
    pointedCut: handle,
    pointer: toDrawing(viewport, canvasSize, at),
    pointedCorner: sameCorner(corner, pointedCorner) ? pointedCorner : corner,
  });
  if (pane === 'inspect') pointInspected(app, at);
  else hoverTarget(app, targetAt(app, at));
}

/** Picks out what is there, and opens the rules of a corner; where the cut is played, the wire goes there. */
function click(app: App, at: ScreenPoint): void {
  const { pane } = app.store.getState();
  if (pane === 'cut') {
    const hit = pathAt(app, at);
    if (hit) goToTime(app, hit.time);
    return;
  }
  if (pane === 'inspect') {
    clickInspected(app, at);
    return;
  }
  selectTarget(app, targetAt(app, at));
  const handle = cutHandleAt(app.store.getState(), at);
  app.store.setState({
    openCorner: handle ? null : cornerAt(app, at),
    openCut: handle && { cutId: handle.cutId, stretch: handle.stretch },
  });
}

function cornerAt(app: App, at: ScreenPoint): CornerName | null {
  const { made, viewport, canvasSize, pane } = app.store.getState();
  // Corners are chosen where the tools are looked at.
  return made && pane === 'review' ? cornerHit(made.plan, viewport, canvasSize, at) : null;
}

function targetAt(app: App, at: ScreenPoint): Target | null {
  const state = app.store.getState();
  const { made, viewport, canvasSize, selected, hovered, hidden, pane } = state;
  if (pane === 'cut') {
    const hit = pathAt(app, at);
    return hit && { kind: 'line', line: hit.line };
  }
  if (pane === 'drawing') {
    const drawing = drawingOf(state);
    const repairs = hidden.includes('repairs') ? [] : (drawing?.repairs ?? []);
    return drawing && hitDrawing(drawing, repairs, viewport, canvasSize, at);
  }
  if (!made) return null;
  const marks = hidden.includes('findings')
    ? []
    : layoutMarks(made.plan, viewport, canvasSize, { selected, hovered });
  return hitTest(made.plan, marks, viewport, canvasSize, at);
}

/** The place of the played program under the pointer. */
function pathAt(app: App, at: ScreenPoint) {
  const { replay, viewport, canvasSize } = app.store.getState();
  if (!replay.program) return null;
  const point = toDrawing(viewport, canvasSize, at);
  return pathHit(replay.program.timeline, point, grasp / viewport.scale);
}
