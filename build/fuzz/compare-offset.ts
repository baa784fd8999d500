import ClipperLib from 'clipper-lib';
import type { Contour, Region, Vertex } from '../../core/geometry/contour';
import { contourArea, contourLength } from '../../core/geometry/contour-measures';
import { offsetRegion } from '../../core/geometry/offset-region';
import { indexOf, nearestSegment, type SegmentIndex } from '../../core/geometry/segment-index';
import { pointAlong } from '../../core/geometry/along-segment';
import { tableOfRegion } from '../../core/geometry/segment-table';
import { clipperArea, clipperOffset, clipperScale, flattened, type ClipperPath } from './clipper-offset';

/** Chord error of the polygons given to clipper-lib, mm. */
export const comparedChord = 1e-4;

/**
 * How far clipper's boundary may lie from the true one: a chord error of the flattened source, one of its round joins,
 * and its grid.
 */
const allowedDistance = 2 * comparedChord + 4 / clipperScale;

/** Loops smaller than this may open or close by the chord error, mm². */
export const sliverArea = 2e-3;

/**
 * Two sets of all points farther than d from a source, known to ε, differ only within {d − ε ≤ distance ≤ d + ε}. That
 * band holds no disc larger than 2ε in radius: from a disc's centre straight to the nearest source point the distance
 * falls by the whole radius. So a difference that a disc this size fits into is a true one, all else is a sliver.
 */
const sliverRadius = 2 * allowedDistance + comparedChord;

export interface OffsetComparison {
  /** 'sliver': not the same point by point, but no place of the difference is wider than the chord error explains. */
  readonly verdict: 'same' | 'sliver' | 'differs';
  readonly say: string;
  /** Hausdorff distance of the two boundaries, mm. */
  readonly apart: number;
  /** Largest error of the distance from an output point (ends and middles) to the source, mm; how many, and how many over 1e-9. */
  readonly error: number;
  readonly points: number;
  readonly overNanometre: number;
}

/** Compares an offset of a contour, ours unless given, with clipper-lib's (6.4.2, Boost licence), polygons at `comparedChord`. */
export function compareOffset(
  contour: Contour,
  distance: number,
  ours: Region = offsetRegion([contour], distance),
): OffsetComparison {
  const exactness = errorsOf(ours, indexOf(tableOfRegion([contour])), Math.abs(distance));
  const theirs = clipperOffset([contour], distance, comparedChord);
  const apart = boundariesApart(ours, theirs);
  const areaOurs = ours.reduce((sum, loop) => sum + contourArea(loop), 0);
  const areaTheirs = theirs.reduce((sum, path) => sum + clipperArea(path), 0);
  const length = ours.reduce((sum, loop) => sum + contourLength(loop), 0);
  const bigOurs = ours.filter((loop) => Math.abs(contourArea(loop)) > sliverArea).length;
  const bigTheirs = theirs.filter((path) => Math.abs(clipperArea(path)) > sliverArea).length;
  const isSame =
    apart <= allowedDistance &&
    Math.abs(areaOurs - areaTheirs) <= allowedDistance * length + 1e-6 &&
    bigOurs === bigTheirs;
  if (isSame && exactness.error <= 1e-6) return { verdict: 'same', say: '', apart, ...exactness };
  const say = `area ${areaOurs.toFixed(6)} against ${areaTheirs.toFixed(6)}, loops ${bigOurs} against ${bigTheirs}, apart ${apart.toExponential(2)}, error ${exactness.error.toExponential(2)}`;
  const verdict = exactness.error > 1e-6 || differByMoreThanSlivers(ours, theirs) ? 'differs' : 'sliver';
  return { verdict, say, apart, ...exactness };
}

function errorsOf(
  region: Region,
  source: SegmentIndex,
  distance: number,
): { error: number; points: number; overNanometre: number } {
  let [error, points, overNanometre] = [0, 0, 0];
  eachPoint(region, (x, y) => {
    const off = Math.abs(nearestSegment(source, x, y).distance - distance);
    points++;
    if (off > 1e-9) overNanometre++;
    if (off > error) error = off;
  });
  return { error, points, overNanometre };
}

/** Ends and middles of all segments. */
function eachPoint(region: Region, visit: (x: number, y: number) => void): void {
  const table = tableOfRegion(region);
  const middle = new Float64Array(2);
  for (let i = 0; i < table.count; i++) {
    visit(table.x0[i] as number, table.y0[i] as number);
    pointAlong(table, i, 0.5, middle);
    visit(middle[0] as number, middle[1] as number);
  }
}

/** Hausdorff distance of the boundaries by the ends of our segments, their middles, and the polygons' ends; Infinity beyond `lookedFor`. */
function boundariesApart(ours: Region, theirs: readonly ClipperPath[]): number {
  const asRegion = theirs.map((path): Vertex[] =>
    path.map(({ X, Y }) => ({ x: X / clipperScale, y: Y / clipperScale, bulge: 0 })),
  );
  const [a, b] = [indexOf(tableOfRegion(ours)), indexOf(tableOfRegion(asRegion))];
  let apart = 0;
  const measure = (to: SegmentIndex, x: number, y: number): void => {
    const { segment, distance } = nearestSegment(to, x, y, lookedFor);
    apart = Math.max(apart, segment < 0 ? Infinity : distance);
  };
  eachPoint(ours, (x, y) => measure(b, x, y));
  for (const path of asRegion) for (const { x, y } of path) measure(a, x, y);
  return apart;
}

/** Boundaries farther apart than this, mm, are compared as areas in any case. */
const lookedFor = 0.001;

function differByMoreThanSlivers(ours: Region, theirs: readonly ClipperPath[]): boolean {
  const clipper = new ClipperLib.Clipper();
  clipper.AddPaths(
    ours.map((loop) => flattened(loop, comparedChord)),
    ClipperLib.PolyType.ptSubject,
    true,
  );
  clipper.AddPaths([...theirs], ClipperLib.PolyType.ptClip, true);
  const difference: ClipperPath[] = [];
  const rule = ClipperLib.PolyFillType.pftNonZero;
  clipper.Execute(ClipperLib.ClipType.ctXor, difference, rule, rule);
  const offsetter = new ClipperLib.ClipperOffset(2, comparedChord * clipperScale);
  offsetter.AddPaths(difference, ClipperLib.JoinType.jtRound, ClipperLib.EndType.etClosedPolygon);
  const left: ClipperPath[] = [];
  offsetter.Execute(left, -sliverRadius * clipperScale);
  return left.length > 0;
}
