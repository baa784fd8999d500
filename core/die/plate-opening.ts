import { combineRegions } from '../geometry/combine-regions';
import { contourArea } from '../geometry/contour-measures';
import type { Contour, Point, Region } from '../geometry/contour';
import { offsetRegion } from '../geometry/offset-region';
import { cornerPlaces, type CornerPlace } from './corner-places';
import * as portable from '../geometry/portable-math';

/**
 * The opening of a plate that a punch goes through: its outline with a gap all round, negative where it presses. Where
 * corners are to be relieved, a round pocket at each that the wire would leave a fillet in, so that the punch does not
 * bind there: its radius is R / sin(α/2) for the largest offset R of a pass and the corner's angle α, just what lets
 * the wire in.
 */
export function plateOpening(punch: Region, gap: number, relieved: PocketWire | null): Region {
  // What is cut out inside a punch does not concern the plate around it.
  const outline = punch.filter((contour) => contourArea(contour) > 0);
  const opening = offsetRegion(outline, gap);
  if (relieved === null) return opening;
  const pockets = opening.flatMap((contour) =>
    cornerPlaces(contour)
      .filter(
        ({ kind, drawnRadius, angle }) =>
          kind === 'convex' && drawnRadius < relieved.reach && angle > sharpest,
      )
      .map((corner) => pocket(contour, corner, relieved.largestOffset)),
  );
  const relievedOpening = pockets.reduce((region, own) => combineRegions(region, [own], 'union'), opening);
  // Steel between two pockets that hangs on nothing falls out.
  return relievedOpening.filter((contour) => contourArea(contour) > 0);
}

/** The wire that pockets are made for, mm. */
export interface PocketWire {
  /** Smallest inside radius that the finishing pass leaves. */
  readonly reach: number;
  /** Largest distance of a pass from the contour. */
  readonly largestOffset: number;
}

/** Corners sharper than this, radians, would take a pocket six times the reach. */
const sharpest = (20 * Math.PI) / 180;

/** The wire goes into it with a little room. */
const room = 1.02;

function pocket(contour: Contour, corner: CornerPlace, offset: number): Contour {
  const { x, y } = tipOf(contour, corner);
  const radius = (room * offset) / portable.sin(corner.angle / 2);
  return [
    { x: x + radius, y, bulge: 1 },
    { x: x - radius, y, bulge: 1 },
  ];
}

/** Where the two edges would meet: the corner itself, or the tip that its rounding takes off. */
function tipOf(contour: Contour, { at, edges, angle, drawnRadius }: CornerPlace): Point {
  if (drawnRadius === 0) return at;
  const end = contour[(edges[0] + 1) % contour.length];
  const begin = contour[edges[1]];
  if (!end || !begin) return at;
  // From the middle of the chord outwards; the tip lies tangent · cos(turn / 2) = r·cot(α/2)·sin(α/2) off it.
  const chord = { x: (end.x + begin.x) / 2, y: (end.y + begin.y) / 2 };
  const sagitta = Math.hypot(at.x - chord.x, at.y - chord.y);
  const height = (drawnRadius / portable.tan(angle / 2)) * portable.cos(angle / 2);
  return {
    x: chord.x + ((at.x - chord.x) / sagitta) * height,
    y: chord.y + ((at.y - chord.y) / sagitta) * height,
  };
}
