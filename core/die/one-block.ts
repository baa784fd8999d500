import type { Contour } from '../geometry/contour';
import { arcOf, eachSegment } from '../geometry/contour-measures';
import type { Result } from '../problem';
import { singleBlock, type SingleBlock } from './single-block';
import { singleBlockContours, type SingleBlockContours } from './single-block-contours';
import * as portable from '../geometry/portable-math';

/** Punch and die of one contour out of one block. */
export interface OneBlock {
  readonly contourId: string;
  readonly use: 'blank' | 'pierce';
  readonly kerf: number;
  readonly height: number;
  readonly clearance: number;
  readonly solved: SingleBlock;
  readonly contours: SingleBlockContours;
  /** Smallest radius at which the die's steel reaches into the opening; 0 for a sharp corner; null where there is none. */
  readonly leastReentrant: number | null;
}

export interface OneBlockQuery {
  readonly contourId: string;
  readonly use: 'blank' | 'pierce';
  readonly contour: Contour;
  readonly kerf: number;
  readonly height: number;
  readonly clearance: number;
}

export function oneBlock(query: OneBlockQuery): Result<OneBlock> {
  const solved = singleBlock(query);
  if (!solved.ok) return solved;
  const { contourId, use, contour, kerf, height, clearance } = query;
  return {
    ok: true,
    value: {
      contourId,
      use,
      kerf,
      height,
      clearance,
      solved: solved.value,
      contours: singleBlockContours(contour, use, solved.value),
      leastReentrant: leastReentrantRadius(contour),
    },
  };
}

/** Where a counter-clockwise contour turns right: by an arc of some radius, or in a corner, whose radius is 0. */
export function leastReentrantRadius(contour: Contour): number | null {
  let least: number | null = null;
  let arriving: number | null = null;
  let first: number | null = null;
  const take = (radius: number) => {
    least = least === null ? radius : Math.min(least, radius);
  };
  const corner = (before: number, after: number) => {
    if (portable.sin(after - before) < -cornerTurn) take(0);
  };
  eachSegment(contour, (from, to) => {
    const chord = portable.atan2(to.y - from.y, to.x - from.x);
    const leaving = chord - 2 * portable.atan(from.bulge);
    if (arriving !== null) corner(arriving, leaving);
    first ??= leaving;
    arriving = chord + 2 * portable.atan(from.bulge);
    if (from.bulge < 0) take(arcOf(from, to).radius);
  });
  if (arriving !== null && first !== null) corner(arriving, first);
  return least;
}

/** A bend of less than this (radians) is smooth. */
const cornerTurn = 0.001;
