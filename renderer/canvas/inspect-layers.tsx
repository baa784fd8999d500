import { useCallback, useMemo } from 'react';
import type { Context } from 'konva/lib/Context';
import { Shape } from 'react-konva';
import { newInspection } from '../../core/inspection-settings';
import { clearanceAtStation } from '../../core/inspect/probe-clearance';
import { zoneLimits } from '../../core/inspect/profile-tolerance';
import { jobOf } from '../state/app-state';
import { comparedSet } from '../state/compared-set';
import { inspectedPair } from '../state/inspected-pair';
import { shownPair } from '../state/shown-pair';
import { useAppState } from '../state/use-app';
import { whiskerTimes } from '../state/whisker-times';
import type { View } from './drawing-space';
import { buildClearance, buildMap, buildRevision } from './inspect-scene';
import { drawClearance, drawExtremes, drawPairPlaces, drawStation } from './layers/draw-clearance';
import { drawLight } from './layers/draw-light';
import { drawMembers } from './layers/draw-members';
import { drawPointedPoint, drawPoints } from './layers/draw-points';
import { drawPicking, drawReading } from './layers/draw-readings';
import { drawRevision } from './layers/draw-revision';
import { contourChunks } from './path-chunk';
import type { Scene } from './scene';

interface LayerProps {
  readonly scene: Scene | null;
  readonly view: View;
}

/** The slow part of inspection's picture: redrawn when the view or an answer changes. */
export function InspectGeometry({ scene, view }: LayerProps) {
  const { section, picture } = useAppState((state) => state.inspect);
  const hidden = useAppState((state) => state.hidden);
  const clearance = useClearanceScene();
  const revision = useRevisionScene();
  const set = useAppState(comparedSet);
  const profile = useMemo(() => (set ? contourChunks(set.target.profile) : []), [set]);
  const pair = usePairScene();
  const times = useAppState(whiskerTimes);
  const zone = useAppState((state) => jobOf(state)?.inspection.profile ?? newInspection.profile);
  const limits = useMemo(() => zoneLimits(zone), [zone]);
  const pointedRow = useAppState((state) => (section === 'revision' ? state.inspect.pointedRow : null));
  const draw = useCallback(
    ({ _context: context }: Context) => {
      const shown = {
        die: !hidden.includes('die'),
        punch: !hidden.includes('punch'),
        designed: !hidden.includes('as designed'),
      };
      if (section === 'clearance' && clearance) {
        if (picture === 'light') drawLight(context, clearance, view);
        else drawClearance(context, clearance, view, shown);
      } else if (section === 'points' && pair) {
        drawClearance(context, pair.scene, view, { die: true, punch: true, designed: true });
        drawPairPlaces(context, pair.places, view);
      } else if (section === 'points' && set) drawPoints(context, set, profile, view, times, limits);
      else if (section === 'revision' && revision) drawRevision(context, revision, view, pointedRow);
      else if (scene) drawMembers(context, scene, view, (part) => !hidden.includes(part));
    },
    [
      section,
      picture,
      hidden,
      clearance,
      revision,
      set,
      pair,
      profile,
      times,
      limits,
      scene,
      view,
      pointedRow,
    ],
  );
  return <Shape listening={false} sceneFunc={draw} />;
}

/** The fast part: what the pointer is on. */
export function InspectOverlay({ view }: Pick<LayerProps, 'view'>) {
  const inspect = useAppState((state) => state.inspect);
  const unit = useAppState((state) => state.unit);
  const areReadingsShown = useAppState((state) => !state.hidden.includes('readings'));
  const readings = useAppState((state) => jobOf(state)?.inspection.readings);
  const set = useAppState(comparedSet);
  const isPairShown = useAppState((state) => shownPair(state) !== null);
  const clearance = useClearanceScene();
  const draw = useCallback(
    ({ _context: context }: Context) => {
      const { section, picture, pointedStation, heldStation } = inspect;
      if (section === 'clearance' && clearance) {
        if (picture === 'map') drawExtremes(context, clearance, view, unit);
        const { map, punch } = clearance.pair;
        for (const [station, isHeld] of [
          [heldStation, true],
          [pointedStation, false],
        ] as const) {
          if (station !== null)
            drawStation(context, clearanceAtStation(map, punch, station), view, unit, isHeld);
        }
      }
      if (section === 'points' && set && !isPairShown)
        drawPointedPoint(context, set, inspect.pointedRow, view);
      if (areReadingsShown && section !== 'revision')
        for (const reading of readings ?? []) drawReading(context, reading, view, unit);
      if (section !== 'measuring') return;
      if (inspect.reading) drawReading(context, inspect.reading, view, unit);
      drawPicking(context, inspect.picks, inspect.snap, view);
    },
    [inspect, unit, areReadingsShown, readings, set, isPairShown, clearance, view],
  );
  return <Shape listening={false} sceneFunc={draw} />;
}

function useClearanceScene() {
  const pair = useAppState((state) => state.inspect.clearance);
  const designed = useAppState(inspectedPair);
  const gapTimes = useAppState((state) => state.inspect.gapTimes);
  return useMemo(
    () => (pair && designed ? buildClearance(pair, designed, gapTimes) : null),
    [pair, designed, gapTimes],
  );
}

/** The measured pair whose map is looked at. */
function usePairScene() {
  const measured = useAppState(shownPair);
  return useMemo(
    () =>
      measured && {
        places: measured.pair.places,
        scene: buildMap(measured.pair.map, measured.pair.die, []),
      },
    [measured],
  );
}

function useRevisionScene() {
  const made = useAppState((state) => state.inspect.revision);
  return useMemo(() => made && buildRevision(made.revision), [made]);
}
