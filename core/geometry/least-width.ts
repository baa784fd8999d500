import type { Point, Region } from './contour';
import { indexOf, isNearer, type SegmentIndex } from './segment-index';
import { directionAt, isBesideArc, num, pointAlong, tableOfRegion, type SegmentTable } from './segment-table';

/** A narrowest place: two points of a boundary that face each other, and how far apart they are, mm. */
export interface Width {
  readonly width: number;
  readonly from: Point;
  readonly to: Point;
}

/**
 * The narrowest place of a region (`inside`) or of what lies around it (`outside`): the smallest disc that touches the
 * boundary at two opposite points and holds no other point of it. Necks, parallel fingers, and walls between loops are
 * all found so; a sharp corner is not a width. Exact: such points are the feet of a common normal of two segments, or
 * reflex corners. Null where no two points face each other (a triangle). O(n²) at worst, by index far less.
 */
export function leastWidth(region: Region, side: 'inside' | 'outside'): Width | null {
  const index = indexOf(tableOfRegion(region));
  const { table, tree } = index;
  if (!tree) return null;
  const search = new WidthSearch(index, side === 'inside' ? 1 : -1, {
    x: tree.maxX - tree.minX,
    y: tree.maxY - tree.minY,
  });
  for (let i = 0; i < table.count; i++) {
    const room = search.best;
    tree.search(
      num(index.boxes, 4 * i) - room,
      num(index.boxes, 4 * i + 1) - room,
      num(index.boxes, 4 * i + 2) + room,
      num(index.boxes, 4 * i + 3) + room,
      (j) => {
        if (j >= i) search.tryPair(i, j);
        return false;
      },
    );
  }
  return search.found;
}

/** Directions that differ by less than this (radians) count as one: a twentieth of a degree is a drawing's rounding. */
const smoothTurn = 0.001;

class WidthSearch {
  best: number;
  found: Width | null = null;
  private readonly table: SegmentTable;
  private readonly index: SegmentIndex;
  private readonly side: 1 | -1;
  private readonly previous: Int32Array;

  constructor(index: SegmentIndex, side: 1 | -1, box: Point) {
    this.index = index;
    this.table = index.table;
    this.side = side;
    // A disc inside the region fits its box; one between loops fits the box's diagonal.
    this.best = (side === 1 ? Math.min(box.x, box.y) : Math.hypot(box.x, box.y)) * (1 + hair);
    this.previous = new Int32Array(this.table.count).fill(-1);
    for (let i = 0; i < this.table.count; i++) this.previous[this.table.next[i] as number] = i;
  }

  tryPair(i: number, j: number): void {
    const { table } = this;
    const startI = { x: num(table.x0, i), y: num(table.y0, i) };
    const startJ = { x: num(table.x0, j), y: num(table.y0, j) };
    if (i !== j) this.tryPoints(startI, i, true, startJ, j, true);
    for (const foot of feetOn(table, j, startI)) this.tryPoints(startI, i, true, foot, j, false);
    for (const foot of feetOn(table, i, startJ)) this.tryPoints(foot, i, false, startJ, j, true);
    for (const [p, q] of facingPoints(table, i, j)) this.tryPoints(p, i, false, q, j, false);
  }

  private tryPoints(p: Point, i: number, pIsVertex: boolean, q: Point, j: number, qIsVertex: boolean): void {
    const width = Math.hypot(q.x - p.x, q.y - p.y);
    if (!(width < this.best) || width === 0) return;
    const u = { x: (q.x - p.x) / width, y: (q.y - p.y) / width };
    if (!this.faces(p, i, pIsVertex, u) || !this.faces(q, j, qIsVertex, { x: -u.x, y: -u.y })) return;
    const middle = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
    if (isNearer(this.index, middle.x, middle.y, (width / 2) * (1 - hair))) return;
    this.best = width;
    this.found = { width, from: p, to: q };
  }

  /** Whether the boundary at a point looks along u: u is its normal, or lies between the normals of a reflex corner. */
  private faces(p: Point, i: number, isVertex: boolean, u: Point): boolean {
    const leaving = directionOf(this.table, i, p);
    const before = isVertex ? (this.previous[i] as number) : -1;
    const arriving = before < 0 ? leaving : directionOf(this.table, before, p);
    const isBehind = u.x * arriving.x + u.y * arriving.y >= -smoothTurn;
    const isAhead = u.x * leaving.x + u.y * leaving.y <= smoothTurn;
    const left = this.side * (u.y * (leaving.x + arriving.x) - u.x * (leaving.y + arriving.y));
    return isBehind && isAhead && left > 0;
  }
}

/** A disc's edge may graze the boundary it touches by rounding. */
const hair = 1 / 1_000_000;

function directionOf(table: SegmentTable, i: number, p: Point): Point {
  const u = new Float64Array(2);
  directionAt(table, i, p.x, p.y, u);
  return { x: num(u, 0), y: num(u, 1) };
}

/** Feet of a point on a segment: one on a line, up to two on an arc. */
function feetOn(table: SegmentTable, i: number, { x, y }: Point): readonly Point[] {
  const r = num(table.radius, i);
  if (r > 0) {
    const cx = num(table.cx, i);
    const cy = num(table.cy, i);
    return onArc(table, i, x - cx, y - cy);
  }
  const x0 = num(table.x0, i);
  const y0 = num(table.y0, i);
  const dx = num(table.x1, i) - x0;
  const dy = num(table.y1, i) - y0;
  const t = ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy);
  return t >= 0 && t <= 1 ? [{ x: x0 + t * dx, y: y0 + t * dy }] : [];
}

/** The points of an arc in a direction from its centre and against it. */
function onArc(table: SegmentTable, i: number, dx: number, dy: number): readonly Point[] {
  const length = Math.hypot(dx, dy);
  if (length === 0) return [];
  const r = num(table.radius, i) / length;
  return [r, -r]
    .map((scale) => ({ x: num(table.cx, i) + scale * dx, y: num(table.cy, i) + scale * dy }))
    .filter(({ x, y }) => isBesideArc(table, i, x, y));
}

/** Pairs of inner points of two segments with a common normal. */
function facingPoints(table: SegmentTable, i: number, j: number): readonly (readonly [Point, Point])[] {
  const ri = num(table.radius, i);
  const rj = num(table.radius, j);
  if (ri === 0 && rj === 0) return i === j ? [] : parallelLines(table, i, j);
  if (ri === 0) return lineAndArc(table, i, j);
  if (rj === 0) return lineAndArc(table, j, i).map(([p, q]) => [q, p] as const);
  const dx = num(table.cx, j) - num(table.cx, i);
  const dy = num(table.cy, j) - num(table.cy, i);
  if (Math.hypot(dx, dy) > hair * ri) return pairsOf(onArc(table, i, dx, dy), onArc(table, j, dx, dy));
  // One centre: every direction is a common normal; an overlap of two arcs holds an end or the middle of one of them.
  return [i, j].flatMap((own) =>
    [0, 0.5, 1].flatMap((along) => {
      const at = new Float64Array(2);
      pointAlong(table, own, along, at);
      const [ux, uy] = [num(at, 0) - num(table.cx, own), num(at, 1) - num(table.cy, own)];
      return pairsOf(onArc(table, i, ux, uy), onArc(table, j, ux, uy));
    }),
  );
}

/** The middle of the stretch in which two parallel lines lie side by side. */
function parallelLines(table: SegmentTable, i: number, j: number): readonly (readonly [Point, Point])[] {
  const x0 = num(table.x0, i);
  const y0 = num(table.y0, i);
  const length = Math.hypot(num(table.x1, i) - x0, num(table.y1, i) - y0);
  const ux = (num(table.x1, i) - x0) / length;
  const uy = (num(table.y1, i) - y0) / length;
  const vx = num(table.x1, j) - num(table.x0, j);
  const vy = num(table.y1, j) - num(table.y0, j);
  if (Math.abs(ux * vy - uy * vx) > smoothTurn * Math.hypot(vx, vy)) return [];
  const along = (x: number, y: number) => (x - x0) * ux + (y - y0) * uy;
  const a = along(num(table.x0, j), num(table.y0, j));
  const b = along(num(table.x1, j), num(table.y1, j));
  const from = Math.max(0, Math.min(a, b));
  const to = Math.min(length, Math.max(a, b));
  if (from > to) return [];
  const p = { x: x0 + ((from + to) / 2) * ux, y: y0 + ((from + to) / 2) * uy };
  return feetOn(table, j, p).map((q) => [p, q] as const);
}

function lineAndArc(table: SegmentTable, line: number, arc: number): readonly (readonly [Point, Point])[] {
  const centre = { x: num(table.cx, arc), y: num(table.cy, arc) };
  // The line's normal, which a centre on the line itself would not give.
  const nx = num(table.y0, line) - num(table.y1, line);
  const ny = num(table.x1, line) - num(table.x0, line);
  return pairsOf(feetOn(table, line, centre), onArc(table, arc, nx, ny));
}

const pairsOf = (first: readonly Point[], second: readonly Point[]): readonly (readonly [Point, Point])[] =>
  first.flatMap((p) => second.map((q) => [p, q] as const));
