import { useCallback, useEffect, useMemo, useRef } from 'react';
import type { Context } from 'konva/lib/Context';
import { Layer, Shape, Stage } from 'react-konva';
import type { Job } from '../../core/job';
import type { AppState, PicturePart } from '../state/app-state';
import { useApp, useAppState } from '../state/use-app';
import { viewOf, type View } from './drawing-space';
import { drawCorner } from './layers/draw-corner';
import { drawDrawing, drawMemberHighlight, drawMembers } from './layers/draw-members';
import { drawMarks } from './layers/draw-marks';
import { drawPaths } from './layers/draw-paths';
import { drawRemainders } from './layers/draw-remainders';
import { layoutMarks } from './mark-layout';
import { readPalette } from './palette';
import { pictureWords } from './picture-words';
import { buildScene, type Scene } from './scene';
import { leavePicture, useGestures } from './use-gestures';

/**
 * The picture: one canvas for the geometry, redrawn when the view or the plan changes, and one over it for marks and
 * highlights, redrawn when the pointer moves. Konva's own hit detection stays off; `hitTest` asks an index instead.
 */
export function PictureStage() {
  const app = useApp();
  const frame = useRef<HTMLDivElement>(null);
  useGestures(app, frame);
  useMeasuredSize(frame);
  const { viewport, canvasSize, made, hidden, shownTheme, isStale } = usePictureState();
  const palette = useMemo(() => readPalette(document), [shownTheme]);
  const view = useMemo(() => viewOf(viewport, canvasSize, palette), [viewport, canvasSize, palette]);
  const scene = useMemo(() => made && buildScene(made.plan), [made]);
  return (
    <div
      ref={frame}
      className="picture"
      role="application"
      // Here and not among the gestures: React tells a row that the pointer entered it before the element itself
      // hears that the pointer left, and the row's highlight would be lost.
      onPointerLeave={() => leavePicture(app)}
      tabIndex={0}
      aria-label="Picture of punch, die and wire paths"
      aria-description={pictureWords(made?.plan ?? null)}
      data-scale={viewport.scale}
      data-centre={`${viewport.centre.x} ${viewport.centre.y}`}
      data-stale={isStale || undefined}
    >
      <Stage width={canvasSize.width} height={canvasSize.height} listening={false}>
        <Layer listening={false}>{scene && <Geometry scene={scene} view={view} hidden={hidden} />}</Layer>
        <Layer listening={false}>
          {scene && made && <Overlay scene={scene} view={view} job={made.job} />}
        </Layer>
      </Stage>
    </div>
  );
}

function usePictureState() {
  const viewport = useAppState((state) => state.viewport);
  const canvasSize = useAppState((state) => state.canvasSize);
  const made = useAppState((state) => state.made);
  const hidden = useAppState((state) => state.hidden);
  const shownTheme = useAppState((state) => state.shownTheme);
  // The last good picture stays while a change has a problem, but pale: it isn't the job's any more.
  const isStale = useAppState((state) => state.problem !== null && state.made !== null);
  return { viewport, canvasSize, made, hidden, shownTheme, isStale };
}

interface GeometryProps {
  readonly scene: Scene;
  readonly view: View;
  readonly hidden: readonly PicturePart[];
}

function Geometry({ scene, view, hidden }: GeometryProps) {
  const draw = useCallback(
    ({ _context: context }: Context) => {
      const isShown = (part: PicturePart) => !hidden.includes(part);
      if (isShown('drawing')) drawDrawing(context, scene, view);
      if (isShown('remainder')) drawRemainders(context, scene, view);
      drawMembers(context, scene, view, isShown);
      if (isShown('path')) drawPaths(context, scene, view, ({ member }) => isShown(member.role));
    },
    [scene, view, hidden],
  );
  return <Shape listening={false} sceneFunc={draw} />;
}

function Overlay({ scene, view, job: madeFor }: { scene: Scene; view: View; job: Job }) {
  const hovered = useAppState((state) => state.hovered);
  const selected = useAppState((state) => state.selected);
  const pointedCorner = useAppState((state) => state.pointedCorner);
  const openCorner = useAppState((state) => state.openCorner);
  const isHidden = useAppState((state) => state.hidden.includes('findings'));
  const job = useAppState((state: AppState) => state.history?.present ?? madeFor);
  const draw = useCallback(
    ({ _context: context }: Context) => {
      drawMemberHighlight(context, scene, view, selected);
      drawMemberHighlight(context, scene, view, hovered);
      drawCorner(context, pointedCorner, view, false);
      drawCorner(context, openCorner, view, true);
      if (isHidden) return;
      const marks = layoutMarks(scene.plan, view.viewport, view.size, { selected, hovered });
      drawMarks(context, marks, view, job, hovered, selected);
    },
    [scene, view, job, hovered, selected, pointedCorner, openCorner, isHidden],
  );
  return <Shape listening={false} sceneFunc={draw} />;
}

function useMeasuredSize(frame: React.RefObject<HTMLDivElement | null>): void {
  const { store } = useApp();
  useEffect(() => {
    const element = frame.current;
    if (!element) return undefined;
    const watcher = new ResizeObserver(() => {
      const { clientWidth: width, clientHeight: height } = element;
      const known = store.getState().canvasSize;
      if (width > 0 && height > 0 && (width !== known.width || height !== known.height)) {
        store.setState({ canvasSize: { width, height } });
      }
    });
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [frame, store]);
}
