import type { Contour, Point } from '../geometry/contour';
import { contourArea, contourBox } from '../geometry/contour-measures';
import { movedPoint } from '../geometry/moved-contour';
import { pilotHoles, type PilotHole } from './pilot-holes';
import type { PieceContour } from './stock-walls';
import { stripLayout, type StripLayout } from './strip-layout';
import { bridgeWidth } from './strip-rules';

export interface StripChoice {
  readonly up: 'none' | 'one up' | 'two up';
  readonly turn: number | null;
  readonly bridge: number | null;
  readonly edge: number | null;
  readonly pilot: number;
}

/** The piece laid into its strip. */
export interface StripPlan {
  readonly contourId: string;
  readonly layout: StripLayout;
  /** The blank's outline and its holes, as drawn. */
  readonly outline: Contour;
  readonly holes: readonly Contour[];
  readonly pilots: readonly PilotHole[];
  readonly pilotDiameter: number;
  /** The strip's step in the drawing's coordinates: how far it moves from stroke to stroke. */
  readonly step: Point;
  /** Bridge and edge by the rule, whatever was typed. */
  readonly leastBridge: number;
}

/** The strip of the largest blank; null where nothing is blanked. `up` none is laid out one up. */
export function stripPlan(
  contours: readonly PieceContour[],
  thickness: number,
  choice: StripChoice,
): StripPlan | null {
  const [blank] = contours
    .filter(({ use }) => use === 'blank')
    .sort((a, b) => Math.abs(contourArea(b.contour)) - Math.abs(contourArea(a.contour)));
  if (!blank) return null;
  const holes = contours
    .filter(({ use, parentId }) => use === 'pierce' && parentId === blank.contourId)
    .map(({ contour }) => contour);
  const box = contourBox(blank.contour);
  const length = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const up = choice.up === 'two up' ? 2 : 1;
  const leastBridge = bridgeWidth(thickness, length, up);
  const bridge = choice.bridge ?? leastBridge;
  const layout = stripLayout({
    outline: blank.contour,
    up,
    bridge,
    edge: choice.edge ?? leastBridge,
    turn: choice.turn,
  });
  const [first] = layout.places;
  return {
    contourId: blank.contourId,
    layout,
    outline: blank.contour,
    holes,
    pilots: pilotHoles(layout, blank.contour, holes, choice.pilot),
    pilotDiameter: choice.pilot,
    step: movedPoint({ x: layout.feed, y: 0 }, { turn: -(first?.turn ?? 0), x: 0, y: 0 }),
    leastBridge,
  };
}
