import type { Box, Chain, Contour, Point, Vertex } from './contour';
import * as portable from './portable-math';

/** Signed area, mm²: positive counter-clockwise. Chord polygon (shoelace) plus the circular segment of every arc. */
export function contourArea(contour: Contour): number {
  const first = contour[0];
  if (!first) return 0;
  let twice = 0;
  let from = first;
  let [ax, ay] = [0, 0];
  for (let i = 1; i <= contour.length; i++) {
    const to = i === contour.length ? first : (contour[i] as Vertex);
    // Relative to the first vertex, so that a part far from the origin keeps its digits.
    const bx = to.x - first.x;
    const by = to.y - first.y;
    twice += ax * by - ay * bx + 2 * capArea(from, to);
    [from, ax, ay] = [to, bx, by];
  }
  return twice / 2;
}

/** Length all round, mm. */
export function contourLength(contour: Contour): number {
  let length = 0;
  eachSegment(contour, (from, to) => (length += segmentLength(from, to)));
  return length;
}

/** Length of an open chain, mm. */
export function chainLength(chain: Chain): number {
  let length = 0;
  for (let i = 0; i + 1 < chain.length; i++) {
    const from = chain[i];
    const to = chain[i + 1];
    if (from && to) length += segmentLength(from, to);
  }
  return length;
}

/** Length of the segment that leaves `from` towards `to`, mm. */
export function segmentLength(from: Vertex, to: Vertex): number {
  const chord = chordLength(from, to);
  const b = Math.abs(from.bulge);
  if (b === 0) return chord;
  // Arc length = radius · angle, radius = chord (1 + b²) / (4 b) (DXF reference, bulge), angle = 4 atan b.
  return ((chord * (1 + b * b)) / b) * portable.atan(b);
}

/** The smallest box around a contour, its arcs' bellies included; an inside-out box for an empty contour. */
export function contourBox(contour: Contour): Box {
  let box: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  eachSegment(contour, (from, to) => (box = boxAround(box, segmentBox(from, to))));
  return box;
}

export const boxAround = (a: Box, b: Box): Box => ({
  minX: Math.min(a.minX, b.minX),
  minY: Math.min(a.minY, b.minY),
  maxX: Math.max(a.maxX, b.maxX),
  maxY: Math.max(a.maxY, b.maxY),
});

/** The smallest box around one segment. */
export function segmentBox(from: Vertex, to: Vertex): Box {
  let minX = Math.min(from.x, to.x);
  let minY = Math.min(from.y, to.y);
  let maxX = Math.max(from.x, to.x);
  let maxY = Math.max(from.y, to.y);
  if (from.bulge !== 0) {
    const { cx, cy, radius } = arcOf(from, to);
    if (cx - radius < minX && isOnArcSide(from, to, cx - radius, cy)) minX = cx - radius;
    if (cx + radius > maxX && isOnArcSide(from, to, cx + radius, cy)) maxX = cx + radius;
    if (cy - radius < minY && isOnArcSide(from, to, cx, cy - radius)) minY = cy - radius;
    if (cy + radius > maxY && isOnArcSide(from, to, cx, cy + radius)) maxY = cy + radius;
  }
  return { minX, minY, maxX, maxY };
}

/** Centre and radius of the arc that leaves `from` (its bulge must not be 0). */
export function arcOf(from: Vertex, to: Vertex): { cx: number; cy: number; radius: number } {
  const b = from.bulge;
  // The centre lies on the chord's perpendicular bisector, (1 − b²) / (4 b) chords to the left of its middle.
  const side = (1 - b * b) / (4 * b);
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const cx = (from.x + to.x) / 2 - side * dy;
  const cy = (from.y + to.y) / 2 + side * dx;
  return { cx, cy, radius: (chordLength(from, to) * (1 + b * b)) / (4 * Math.abs(b)) };
}

/** Math.hypot guards against numbers that no drawing has, and takes ten times as long. */
function chordLength(from: Point, to: Point): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  return Math.sqrt(dx * dx + dy * dy);
}

/** The same ring run the other way. */
export function reversedContour(contour: Contour): Contour {
  return contour.map((_, i) => {
    const at = contour[contour.length - 1 - i] as Vertex;
    const before = contour[(2 * contour.length - 2 - i) % contour.length] as Vertex;
    return { x: at.x, y: at.y, bulge: zeroSafe(-before.bulge) };
  });
}

/** The same chain run the other way. */
export function reversedChain(chain: Chain): Chain {
  return chain.map((_, i) => {
    const at = chain[chain.length - 1 - i] as Vertex;
    const before = chain[chain.length - 2 - i];
    return { x: at.x, y: at.y, bulge: before ? zeroSafe(-before.bulge) : 0 };
  });
}

/** Calls back with both ends of every segment of a closed contour. */
export function eachSegment(
  contour: Contour,
  visit: (from: Vertex, to: Vertex, index: number) => void,
): void {
  for (let i = 0; i < contour.length; i++) {
    visit(contour[i] as Vertex, contour[i + 1 === contour.length ? 0 : i + 1] as Vertex, i);
  }
}

/** Signed area between chord and arc, positive for a counter-clockwise arc: r² (angle − sin angle) / 2. */
function capArea(from: Vertex, to: Vertex): number {
  const b = from.bulge;
  if (b === 0) return 0;
  const chord = chordLength(from, to);
  const size = Math.abs(b);
  const angle = 4 * portable.atan(size);
  const radius = (chord * (1 + b * b)) / (4 * size);
  // For flat arcs angle − sin angle cancels; its series keeps the digits.
  const excess =
    angle < 0.05 ? (angle ** 3 / 6) * (1 - angle ** 2 / 20 + angle ** 4 / 840) : angle - portable.sin(angle);
  return (Math.sign(b) * radius * radius * excess) / 2;
}

/** Whether a point of the full circle lies on the arc: arcs are at most half turns, so the chord divides the circle. */
function isOnArcSide(from: Vertex, to: Vertex, x: number, y: number): boolean {
  const cross = (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
  return from.bulge > 0 ? cross <= 0 : cross >= 0;
}

const zeroSafe = (value: number): number => (value === 0 ? 0 : value);
