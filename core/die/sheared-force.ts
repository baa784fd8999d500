import type { Region, Vertex } from '../geometry/contour';
import { arcOf, eachSegment, segmentLength } from '../geometry/contour-measures';
import * as portable from '../geometry/portable-math';

/** How the cutting edge is ground: flat, one slope across it, or a roof whose ridge or valley is in the middle. */
export type EdgeShear = 'flat' | 'slope' | 'roof';

export interface ShearedEdge {
  readonly shear: EdgeShear;
  /** From the first point of the edge to touch to the last, mm. */
  readonly depth: number;
  /** The way the edge slopes, radians from +x. */
  readonly direction: number;
  /** Travel from first contact to the break of one place, mm: penetration share times thickness. */
  readonly penetration: number;
}

/**
 * The greatest part of the edge that cuts at one time, 0 to 1: the cutting force of a sheared edge over that of a flat
 * one. Exact geometry: the edge's height is linear across it, a place cuts from contact until the punch has gone in by
 * the penetration, so that what cuts is the length of edge within a band of that height. Assumes an even force on the
 * way in. A shear no deeper than the penetration takes nothing off.
 */
export function shearedShare(region: Region, edge: ShearedEdge): number {
  const { shear, depth, penetration } = edge;
  if (shear === 'flat' || depth <= penetration) return 1;
  const pieces = piecesAcross(region, edge.direction);
  const low = Math.min(...pieces.map(({ from }) => from));
  const high = Math.max(...pieces.map(({ to }) => to));
  const total = pieces.reduce((sum, piece) => sum + piece.length, 0);
  if (!(total > 0) || !(high > low)) return 1;
  const middle = (low + high) / 2;
  const reach = shear === 'slope' ? high - low : (high - low) / 2;
  const band = (penetration / depth) * reach;
  const below = (s: number) => pieces.reduce((sum, piece) => sum + lengthBelow(piece, s), 0);
  // A band includes edges that lie square to the slope at either of its ends.
  const hair = reach / 1_000_000_000;
  const between = (from: number, to: number) => below(to + hair) - below(from - hair);
  const cutting =
    shear === 'slope'
      ? (s: number) => between(low + s, low + s + band)
      : (s: number) => between(middle + s, middle + s + band) + between(middle - s - band, middle - s);
  return Math.min(1, greatest(cutting, reach - band) / total);
}

/** A piece of the contour along which the coordinate only grows or only falls. */
interface Piece {
  readonly from: number;
  readonly to: number;
  readonly length: number;
  /** Arcs: radius and centre; 0 for lines. */
  readonly radius: number;
  readonly centre: number;
}

function piecesAcross(region: Region, direction: number): readonly Piece[] {
  const across = ({ x, y }: { x: number; y: number }) =>
    x * portable.cos(direction) + y * portable.sin(direction);
  const pieces: Piece[] = [];
  for (const contour of region) {
    eachSegment(contour, (from, to) => {
      if (from.bulge === 0) pieces.push(lineOf(across(from), across(to), segmentLength(from, to)));
      else pieces.push(...arcPieces(from, to, direction, across));
    });
  }
  return pieces;
}

const lineOf = (a: number, b: number, length: number): Piece => ({
  from: Math.min(a, b),
  to: Math.max(a, b),
  length,
  radius: 0,
  centre: 0,
});

/** An arc cut where it runs square to the direction: at its angles 0 and π against it. */
function arcPieces(
  from: Vertex,
  to: Vertex,
  direction: number,
  across: (p: { x: number; y: number }) => number,
): readonly Piece[] {
  const { cx, cy, radius } = arcOf(from, to);
  const start = portable.atan2(from.y - cy, from.x - cx) - direction;
  const end = start + 4 * portable.atan(from.bulge);
  const [low, high] = start < end ? [start, end] : [end, start];
  const cuts = [low, high];
  for (let k = Math.ceil(low / Math.PI); k * Math.PI < high; k++) cuts.push(k * Math.PI);
  cuts.sort((a, b) => a - b);
  const centre = across({ x: cx, y: cy });
  return cuts.slice(1).map((angle, i) => {
    const before = cuts[i] as number;
    const [a, b] = [centre + radius * portable.cos(before), centre + radius * portable.cos(angle)];
    return {
      from: Math.min(a, b),
      to: Math.max(a, b),
      length: radius * (angle - before),
      radius,
      centre,
    };
  });
}

function lengthBelow({ from, to, length, radius, centre }: Piece, s: number): number {
  if (s >= to) return length;
  if (s <= from) return 0;
  if (radius === 0) return (length * (s - from)) / (to - from);
  const angle = (at: number) => portable.acos(Math.max(-1, Math.min(1, (at - centre) / radius)));
  return radius * (angle(from) - angle(s));
}

/** The greatest value on 0 to `end`: looked for at even steps, then narrowed down by golden section. */
function greatest(value: (s: number) => number, end: number): number {
  if (end <= 0) return value(0);
  let best = 0;
  for (let k = 1; k <= steps; k++) if (value((k / steps) * end) > value((best / steps) * end)) best = k;
  let low = (Math.max(0, best - 1) / steps) * end;
  let high = (Math.min(steps, best + 1) / steps) * end;
  const golden = (Math.sqrt(5) - 1) / 2;
  for (let k = 0; k < 48; k++) {
    const a = high - golden * (high - low);
    const b = low + golden * (high - low);
    if (value(a) >= value(b)) high = b;
    else low = a;
  }
  return Math.max(value((best / steps) * end), value((low + high) / 2));
}
const steps = 512;
