import ClipperLib from 'clipper-lib';
import { pointAlong } from '../../core/geometry/along-segment';
import type { Region, Vertex } from '../../core/geometry/contour';
import { contourArea, contourLength } from '../../core/geometry/contour-measures';
import { indexOf, nearestSegment, type SegmentIndex } from '../../core/geometry/segment-index';
import { tableOfRegion } from '../../core/geometry/segment-table';
import { clipperArea, clipperScale, flattened, type ClipperPath } from './clipper-offset';

/** Chord error of the polygons given to clipper-lib, mm. */
export const comparedChord = 1e-4;

/**
 * How far clipper's boundary may lie from the true one: a chord error of the flattened source, one of its round joins,
 * and its grid.
 */
const allowedDistance = 2 * comparedChord + 4 / clipperScale;

/** Loops smaller than this may open or close by the chord error, mm². */
const sliverArea = 2e-3;

/**
 * Two sets of all points farther than d from a source, known to ε, differ only within {d − ε ≤ distance ≤ d + ε}. That
 * band holds no disc larger than 2ε in radius: from a disc's centre straight to the nearest source point the distance
 * falls by the whole radius. So a difference that a disc this size fits into is a true one, all else is a sliver. The
 * same holds for unions, differences and intersections of regions whose boundaries are known to ε.
 */
const sliverRadius = 2 * allowedDistance + comparedChord;

export interface RegionComparison {
  /** 'sliver': not the same point by point, but no place of the difference is wider than the chord error explains. */
  readonly verdict: 'same' | 'sliver' | 'differs';
  readonly say: string;
  /** Hausdorff distance of the two boundaries, mm. */
  readonly apart: number;
}

/** Compares a region of lines and arcs with what clipper-lib made of it in polygons at `comparedChord`. */
export function compareWithPolygons(ours: Region, theirs: readonly ClipperPath[]): RegionComparison {
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
  const say = `area ${areaOurs.toFixed(6)} against ${areaTheirs.toFixed(6)}, loops ${bigOurs} against ${bigTheirs}, apart ${apart.toExponential(2)}`;
  if (isSame) return { verdict: 'same', say, apart };
  return { verdict: differByMoreThanSlivers(ours, theirs) ? 'differs' : 'sliver', say, apart };
}

/** Whether a place of the first that is wider than a sliver lies outside the second. */
export function reachesBeyond(first: readonly ClipperPath[], second: readonly ClipperPath[]): boolean {
  return isWide(combined(first, second, ClipperLib.ClipType.ctDifference));
}

/** Ends and middles of all segments. */
export function eachPoint(region: Region, visit: (x: number, y: number) => void): void {
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

const differByMoreThanSlivers = (ours: Region, theirs: readonly ClipperPath[]): boolean =>
  isWide(
    combined(
      ours.map((loop) => flattened(loop, comparedChord)),
      theirs,
      ClipperLib.ClipType.ctXor,
    ),
  );

/** Two sets of polygons combined by clipper-lib. */
export function combined(
  first: readonly ClipperPath[],
  second: readonly ClipperPath[],
  operation: ClipperLib.ClipType,
): ClipperPath[] {
  const clipper = new ClipperLib.Clipper();
  clipper.AddPaths([...first], ClipperLib.PolyType.ptSubject, true);
  clipper.AddPaths([...second], ClipperLib.PolyType.ptClip, true);
  const result: ClipperPath[] = [];
  const rule = ClipperLib.PolyFillType.pftNonZero;
  clipper.Execute(operation, result, rule, rule);
  return result;
}

/** Whether a disc wider than a sliver fits anywhere into polygons. */
function isWide(paths: readonly ClipperPath[]): boolean {
  const offsetter = new ClipperLib.ClipperOffset(2, comparedChord * clipperScale);
  offsetter.AddPaths([...paths], ClipperLib.JoinType.jtRound, ClipperLib.EndType.etClosedPolygon);
  const left: ClipperPath[] = [];
  offsetter.Execute(left, -sliverRadius * clipperScale);
  return left.length > 0;
}
