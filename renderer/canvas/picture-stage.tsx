import { useCallback, useEffect, useMemo, useRef } from 'react';
import type { Context } from 'konva/lib/Context';
import { Layer, Shape, Stage } from 'react-konva';
import type { GapBin } from '../../core/drawing/gap-histogram';
import { picturePartOf } from '../picture/picture-part-of';
import { jobOf, type PicturePart } from '../state/app-state';
import { resized } from '../state/resized';
import { sectionLineOf } from '../state/section-line';
import { useApp, useAppState } from '../state/use-app';
import { viewOf, type View } from './drawing-space';
import { buildContours, buildLines, type ContoursScene, type LinesScene } from './drawing-scene';
import { drawDieSet, drawSectionLine } from './layers/draw-die-set';
import { drawContours, drawLines } from './layers/draw-drawing';
import { drawCorner } from './layers/draw-corner';
import { drawBlock, drawCutDrag, drawCutHandles } from './layers/draw-cut-handles';
import { drawMarks } from './layers/draw-marks';
import { drawMemberHighlight, drawMembers } from './layers/draw-members';
import { drawPaths } from './layers/draw-paths';
import { drawPointedLines } from './layers/draw-pointed-lines';
import { drawRelief } from './layers/draw-relief';
import { drawRemainders } from './layers/draw-remainders';
import { drawGapPlaces, drawRepairs } from './layers/draw-repairs';
import { InspectGeometry, InspectOverlay } from './inspect-layers';
import { layoutMarks } from './mark-layout';
import { readPalette } from './palette';
import { pictureWords } from './picture-words';
import { ReplayPicture } from './replay-picture';
import { buildScene, sceneOfBlock, type Scene } from './scene';
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
  const { viewport, canvasSize, made, survey, shownTheme, isStale, pane } = usePictureState();
  const isInspected = pane === 'inspect';
  const palette = useMemo(() => readPalette(document), [shownTheme]);
  const view = useMemo(() => viewOf(viewport, canvasSize, palette), [viewport, canvasSize, palette]);
  const scene = useMemo(() => made && buildScene(made.plan), [made]);
  const drawing = survey?.drawing ?? null;
  const contours = useMemo(() => drawing && buildContours(drawing), [drawing]);
  const lines = useMemo(() => survey && buildLines(survey), [survey]);
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
        <Layer listening={false}>
          {isInspected ? (
            <InspectGeometry scene={scene} view={view} />
          ) : (
            <Geometry scene={scene} contours={contours} lines={lines} view={view} />
          )}
        </Layer>
        {pane === 'cut' && (
          <Layer listening={false}>
            <ReplayPicture view={view} />
          </Layer>
        )}
        <Layer listening={false}>
          {isInspected ? (
            <InspectOverlay view={view} />
          ) : (
            <Overlay scene={scene} contours={contours} lines={lines} view={view} />
          )}
        </Layer>
      </Stage>
    </div>
  );
}

function usePictureState() {
  const viewport = useAppState((state) => state.viewport);
  const canvasSize = useAppState((state) => state.canvasSize);
  const made = useAppState((state) => state.made);
  const survey = useAppState((state) => state.survey);
  const shownTheme = useAppState((state) => state.shownTheme);
  // The last good picture stays while a change has a problem, but pale: it isn't the job's any more.
  const isStale = useAppState((state) => state.problem !== null && state.made !== null);
  const pane = useAppState((state) => state.pane);
  return { viewport, canvasSize, made, survey, shownTheme, isStale, pane };
}

interface PictureProps {
  readonly scene: Scene | null;
  readonly contours: ContoursScene | null;
  readonly lines: LinesScene | null;
  readonly view: View;
}

function Geometry({ scene: whole, contours, lines, view }: PictureProps) {
  const program = useAppState(({ pane, replay }) => (pane === 'cut' ? replay.program : null));
  // Where the cut is played, only what is cut from the same block is shown.
  const scene = useMemo(() => whole && sceneOfBlock(whole, program?.blockId ?? null), [whole, program]);
  const hidden = useAppState((state) => state.hidden);
  const pane = useAppState((state) => state.pane);
  const draw = useCallback(
    ({ _context: context }: Context) => {
      const isShown = (part: PicturePart) => !hidden.includes(part);
      if (lines && isShown(pane === 'drawing' ? 'lines' : 'drawing'))
        drawLines(context, lines, view, contours === null);
      if (contours) drawContours(context, contours, view, pane, isShown);
      if (!scene || pane === 'drawing') return;
      if (pane === 'die-set') {
        drawMembers(context, scene, view, isShown);
        drawDieSet(context, scene.dieSet, view, isShown);
        return;
      }
      if (isShown('remainder')) drawRemainders(context, scene, view);
      if (isShown('relief')) drawRelief(context, scene, view, isShown);
      drawMembers(context, scene, view, isShown);
      // The replay has its own, from the program's text.
      if (isShown('path') && pane === 'review')
        drawPaths(context, scene, view, ({ member }) => isShown(picturePartOf(member)));
    },
    [scene, contours, lines, view, hidden, pane],
  );
  return <Shape listening={false} sceneFunc={draw} />;
}

function Overlay({ scene, contours, lines, view }: PictureProps) {
  const hovered = useAppState((state) => state.hovered);
  const selected = useAppState((state) => state.selected);
  const hidden = useAppState((state) => state.hidden);
  const pointedCorner = useAppState((state) => state.pointedCorner);
  const openCorner = useAppState((state) => state.openCorner);
  const pointedCut = useAppState((state) => state.pointedCut);
  const openCut = useAppState((state) => state.openCut);
  const draggedCut = useAppState((state) => state.draggedCut);
  const pane = useAppState((state) => state.pane);
  const unit = useAppState((state) => state.unit);
  const job = useAppState(jobOf);
  const sectionAt = useAppState((state) => state.sectionAt);
  const draw = useCallback(
    ({ _context: context }: Context) => {
      const picked = { selected, hovered };
      for (const target of [selected, hovered]) {
        drawPointedLines(context, lines, contours, view, target);
        if (scene && pane !== 'drawing') drawMemberHighlight(context, scene, view, target);
      }
      if (pane === 'review') {
        drawCorner(context, pointedCorner, view, false);
        drawCorner(context, openCorner, view, true);
        const picked = openCut ?? draggedCut;
        for (const block of scene?.plan.blocks ?? []) {
          const isPicked = block.memberIds.some((id) => picked?.cutId.startsWith(`${id}-`));
          if (isPicked) drawBlock(context, block, view);
        }
        if (scene) drawCutHandles(context, scene, view, pointedCut, openCut);
        drawCutDrag(context, draggedCut, view);
      }
      const bars = lines?.survey.gaps?.bins ?? [];
      if (pane === 'drawing' && !contours && job)
        drawGapPlaces(context, openPlaces(bars, job.drawing.gapTolerance), view, view.palette.stop);
      if (hovered?.kind === 'gaps')
        drawGapPlaces(context, bars[hovered.bar]?.places ?? [], view, view.palette.focus);
      if (pane === 'die-set' && scene) drawSectionLine(context, sectionLineOf(scene.plan, sectionAt), view);
      if (pane === 'drawing') {
        if (contours && !hidden.includes('repairs'))
          drawRepairs(context, contours.drawing.repairs, view, unit, picked);
      } else if (pane === 'review' && scene && job && !hidden.includes('findings')) {
        const marks = layoutMarks(scene.plan, view.viewport, view.size, picked);
        drawMarks(context, marks, view, job, hovered, selected);
      }
    },
    [
      scene,
      contours,
      lines,
      view,
      job,
      hovered,
      selected,
      hidden,
      pane,
      unit,
      pointedCorner,
      openCorner,
      pointedCut,
      openCut,
      draggedCut,
      sectionAt,
    ],
  );
  return <Shape listening={false} sceneFunc={draw} />;
}

/** Where ends stay apart that have another one near. */
const openPlaces = (bars: readonly GapBin[], gapTolerance: number) =>
  bars.filter(({ to }) => to > gapTolerance).flatMap(({ places }) => places);

function useMeasuredSize(frame: React.RefObject<HTMLDivElement | null>): void {
  const { store } = useApp();
  useEffect(() => {
    const element = frame.current;
    if (!element) return undefined;
    const watcher = new ResizeObserver(() => {
      const { clientWidth: width, clientHeight: height } = element;
      const known = store.getState().canvasSize;
      if (width > 0 && height > 0 && (width !== known.width || height !== known.height)) {
        store.setState((state) => resized(state, { width, height }));
      }
    });
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [frame, store]);
}
