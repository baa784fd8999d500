import type { Contour, Region } from '../geometry/contour';
import { offsetRegion } from '../geometry/offset-region';
import type { SingleBlock } from './single-block';

/** Where things are in the block: at the die's edge (the narrow face), or at the punch's (the wide face). */
export type BlockFace = 'die edge' | 'punch edge';

export interface FaceContours {
  /** Path of the wire's centre in the plane of this face. */
  readonly wire: Region;
  readonly die: Region;
  readonly punch: Region;
}

export type SingleBlockContours = Readonly<Record<BlockFace, FaceContours>>;

/**
 * Contours of both members at both faces of the block, as the tilted wire leaves them. Blanking: the die's edge is the
 * drawing and the punch's edge lies inside it by the clearance; piercing: the punch's edge is the drawing. The wire
 * leans outwards on its way from the die's edge to the punch's, so every contour there lies farther out by h·tan θ.
 *
 * At inside corners of the die the wire leaves a fillet of half its cut at the narrow face; the punch's corner is
 * rounded to that less the clearance by the same wire, so the clearance stays even round it.
 */
export function singleBlockContours(
  drawn: Contour,
  use: 'blank' | 'pierce',
  { halfKerf, drift }: SingleBlock,
): SingleBlockContours {
  // The wire's path at the die's edge; at the punch's edge it lies outside of that by the drift.
  const narrow = use === 'blank' ? offsetRegion([drawn], -halfKerf) : narrowPath(drawn, halfKerf, drift);
  const wide = offsetRegion(narrow, drift);
  const faceOf = (wire: Region): FaceContours => ({
    wire,
    die: offsetRegion(wire, halfKerf),
    punch: offsetRegion(wire, -halfKerf),
  });
  return { 'die edge': faceOf(narrow), 'punch edge': faceOf(wide) };
}

/** Piercing: half the cut outside of the hole at the wide face, and in by the drift. */
const narrowPath = (drawn: Contour, halfKerf: number, drift: number): Region =>
  offsetRegion(offsetRegion([drawn], halfKerf), -drift);
