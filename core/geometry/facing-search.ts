import { nearestSegment, type SegmentIndex } from './segment-index';
import { directionAt } from './along-segment';
import { isBesideArc, num, squaredDistance, type SegmentTable } from './segment-table';
import { tolerance } from './tolerance';
import type { Width } from './width';

/**
 * Looks for the nearest two points of a boundary that face each other across the steel: `side` 1 where it lies left of
 * travel, −1 where it lies right. Each pair of segments has a few points that can face each other, known in closed
 * form; a pair is dropped as soon as a sign or a length says no.
 */
export class FacingSearch {
  best: number;
  found: Width | null = null;
  private blocker = -1;
  private readonly index: SegmentIndex;
  private readonly table: SegmentTable;
  private readonly side: 1 | -1;
  /** Direction of travel before and after the corner at the start of each segment. */
  private readonly arriveX: Float64Array;
  private readonly arriveY: Float64Array;
  private readonly leaveX: Float64Array;
  private readonly leaveY: Float64Array;
  /** 1 where that corner is smooth or reflex: a convex one faces nothing. */
  private readonly canFace: Uint8Array;

  constructor(index: SegmentIndex, side: 1 | -1, within: number) {
    const { table, tree } = index;
    this.index = index;
    this.table = table;
    this.side = side;
    const width = (tree?.maxX ?? 0) - (tree?.minX ?? 0);
    const height = (tree?.maxY ?? 0) - (tree?.minY ?? 0);
    // A disc inside the region fits its box; one between loops fits the box's diagonal.
    const bound = side === 1 ? Math.min(width, height) : Math.hypot(width, height);
    this.best = Math.min(within, bound * (1 + hair));
    const column = () => new Float64Array(table.count);
    [this.arriveX, this.arriveY, this.leaveX, this.leaveY] = [column(), column(), column(), column()];
    this.canFace = new Uint8Array(table.count);
    const u = new Float64Array(2);
    for (let i = 0; i < table.count; i++) {
      directionAt(table, i, num(table.x0, i), num(table.y0, i), u);
      this.leaveX[i] = num(u, 0);
      this.leaveY[i] = num(u, 1);
      const next = table.next[i] as number;
      directionAt(table, i, num(table.x1, i), num(table.y1, i), u);
      this.arriveX[next] = num(u, 0);
      this.arriveY[next] = num(u, 1);
    }
    for (let i = 0; i < table.count; i++) {
      const turn = num(this.arriveX, i) * num(this.leaveY, i) - num(this.arriveY, i) * num(this.leaveX, i);
      this.canFace[i] = side * turn < smoothTurn ? 1 : 0;
    }
  }

  tryPair(i: number, j: number): void {
    const { table } = this;
    const cornerI = this.canFace[i] === 1;
    const cornerJ = this.canFace[j] === 1;
    if (cornerI && i !== j) this.cornerAndSegment(i, j);
    if (cornerJ && i !== j) this.cornerAndSegment(j, i);
    if (cornerI && cornerJ && i !== j) this.corners(i, j);
    const isArcI = num(table.radius, i) > 0;
    const isArcJ = num(table.radius, j) > 0;
    if (isArcI && isArcJ) this.arcs(i, j);
    else if (isArcI) this.lineAndArc(j, i);
    else if (isArcJ) this.lineAndArc(i, j);
    else if (i !== j) this.lines(i, j);
  }

  /** Two corners: each must face the other. */
  private corners(i: number, j: number): void {
    const { table } = this;
    this.offer(num(table.x0, i), num(table.y0, i), i, num(table.x0, j), num(table.y0, j), j);
  }

  /** A corner of i and the point of segment j that faces it. */
  private cornerAndSegment(i: number, j: number): void {
    const { table } = this;
    const x = num(table.x0, i);
    const y = num(table.y0, i);
    const r = num(table.radius, j);
    if (r > 0) {
      const dx = x - num(table.cx, j);
      const dy = y - num(table.cy, j);
      const away = Math.sqrt(dx * dx + dy * dy);
      if (away === 0) return;
      // A hollow arc faces its centre: the corner lies within it, or beyond the centre. A round one faces outwards.
      const hollow = this.isHollow(j);
      this.offerOnArc(x, y, i, j, r / away, !hollow ? away - r : r - away);
      if (hollow) this.offerOnArc(x, y, i, j, -r / away, r + away);
      return;
    }
    const dx = num(this.leaveX, j);
    const dy = num(this.leaveY, j);
    const ex = x - num(table.x0, j);
    const ey = y - num(table.y0, j);
    const above = this.side * (dx * ey - dy * ex);
    if (above <= 0 || above >= this.best) return;
    const along = ex * dx + ey * dy;
    if (along < 0 || along > this.lengthOf(j)) return;
    this.offer(x, y, i, num(table.x0, j) + along * dx, num(table.y0, j) + along * dy, -1);
  }

  private offerOnArc(x: number, y: number, i: number, j: number, scale: number, width: number): void {
    if (width <= 0 || width >= this.best) return;
    const { table } = this;
    const qx = num(table.cx, j) + scale * (x - num(table.cx, j));
    const qy = num(table.cy, j) + scale * (y - num(table.cy, j));
    if (isBesideArc(table, j, qx, qy)) this.offer(x, y, i, qx, qy, -1);
  }

  /** Parallel lines that look at each other: the middle of the stretch in which they lie side by side. */
  private lines(i: number, j: number): void {
    const dx = num(this.leaveX, i);
    const dy = num(this.leaveY, i);
    const fx = num(this.leaveX, j);
    const fy = num(this.leaveY, j);
    if (dx * fx + dy * fy >= 0 || Math.abs(dx * fy - dy * fx) > smoothTurn) return;
    const { table } = this;
    const ex = num(table.x0, j) - num(table.x0, i);
    const ey = num(table.y0, j) - num(table.y0, i);
    const a = ex * dx + ey * dy;
    const b = a + (fx * dx + fy * dy) * this.lengthOf(j);
    const from = Math.max(0, Math.min(a, b));
    const to = Math.min(this.lengthOf(i), Math.max(a, b));
    if (from > to) return;
    const px = num(table.x0, i) + ((from + to) / 2) * dx;
    const py = num(table.y0, i) + ((from + to) / 2) * dy;
    const along = (px - num(table.x0, j)) * fx + (py - num(table.y0, j)) * fy;
    const qx = num(table.x0, j) + along * fx;
    const qy = num(table.y0, j) + along * fy;
    if (this.side * (dx * (qy - py) - dy * (qx - px)) > 0) this.offer(px, py, -1, qx, qy, -1);
  }

  /** A line and the point of an arc whose normal is the line's, turned round. */
  private lineAndArc(line: number, arc: number): void {
    const { table } = this;
    const dx = num(this.leaveX, line);
    const dy = num(this.leaveY, line);
    const nx = -this.side * dy;
    const ny = this.side * dx;
    const r = this.isHollow(arc) ? num(table.radius, arc) : -num(table.radius, arc);
    const qx = num(table.cx, arc) + r * nx;
    const qy = num(table.cy, arc) + r * ny;
    const ex = qx - num(table.x0, line);
    const ey = qy - num(table.y0, line);
    const width = ex * nx + ey * ny;
    if (width <= 0 || width >= this.best) return;
    const along = ex * dx + ey * dy;
    if (along < 0 || along > this.lengthOf(line) || !isBesideArc(table, arc, qx, qy)) return;
    this.offer(qx - width * nx, qy - width * ny, -1, qx, qy, -1);
  }

  private arcs(i: number, j: number): void {
    const { table } = this;
    const dx = num(table.cx, j) - num(table.cx, i);
    const dy = num(table.cy, j) - num(table.cy, i);
    const apart = Math.sqrt(dx * dx + dy * dy);
    if (apart > hair * num(table.radius, i)) {
      this.arcsAlong(i, j, dx / apart, dy / apart);
      this.arcsAlong(i, j, -dx / apart, -dy / apart);
      return;
    }
    // One centre: every direction is a common normal; an overlap of two arcs begins at an end of one of them.
    for (const own of [i, j]) {
      for (const [x, y] of [
        [num(table.x0, own), num(table.y0, own)],
        [num(table.x1, own), num(table.y1, own)],
      ] as const) {
        const ux = (x - num(table.cx, own)) / num(table.radius, own);
        const uy = (y - num(table.cy, own)) / num(table.radius, own);
        this.arcsAlong(i, j, ux, uy);
        this.arcsAlong(i, j, -ux, -uy);
      }
    }
  }

  /** The points of two arcs that face each other along u, from i to j. */
  private arcsAlong(i: number, j: number, ux: number, uy: number): void {
    const { table } = this;
    const ri = this.isHollow(i) ? num(table.radius, i) : -num(table.radius, i);
    const rj = this.isHollow(j) ? num(table.radius, j) : -num(table.radius, j);
    const px = num(table.cx, i) - ri * ux;
    const py = num(table.cy, i) - ri * uy;
    const qx = num(table.cx, j) + rj * ux;
    const qy = num(table.cy, j) + rj * uy;
    const width = (qx - px) * ux + (qy - py) * uy;
    if (width <= 0 || width >= this.best) return;
    if (isBesideArc(table, i, px, py) && isBesideArc(table, j, qx, qy)) this.offer(px, py, -1, qx, qy, -1);
  }

  /** Takes two points if they are nearer than the best and the disc between them is empty; corners must face. */
  private offer(px: number, py: number, cornerP: number, qx: number, qy: number, cornerQ: number): void {
    const dx = qx - px;
    const dy = qy - py;
    const width = Math.sqrt(dx * dx + dy * dy);
    if (!(width < this.best) || width <= tolerance.samePoint) return;
    if (cornerP >= 0 && !this.faces(cornerP, dx / width, dy / width)) return;
    if (cornerQ >= 0 && !this.faces(cornerQ, -dx / width, -dy / width)) return;
    if (this.isBlocked((px + qx) / 2, (py + qy) / 2, (width / 2) * (1 - hair))) return;
    this.best = width;
    this.found = { width, from: { x: px, y: py }, to: { x: qx, y: qy } };
  }

  /** Whether a disc holds a point of the boundary. What was in the way of the last one often is again. */
  private isBlocked(x: number, y: number, radius: number): boolean {
    const squared = radius * radius;
    if (this.blocker >= 0 && squaredDistance(this.table, this.blocker, x, y) < squared) return true;
    const { segment, distance } = nearestSegment(this.index, x, y);
    if (distance >= radius) return false;
    this.blocker = segment;
    return true;
  }

  /** Whether u lies between the normals of the corner at the start of segment i. */
  private faces(i: number, ux: number, uy: number): boolean {
    const ax = num(this.arriveX, i);
    const ay = num(this.arriveY, i);
    const lx = num(this.leaveX, i);
    const ly = num(this.leaveY, i);
    return (
      ux * ax + uy * ay >= -smoothTurn &&
      ux * lx + uy * ly <= smoothTurn &&
      this.side * ((ax + lx) * uy - (ay + ly) * ux) > 0
    );
  }

  /** Whether the steel lies on the arc's centre's side. */
  private isHollow(i: number): boolean {
    return num(this.table.bulge, i) > 0 === this.side > 0;
  }

  private lengthOf(i: number): number {
    const { x0, y0, x1, y1 } = this.table;
    return Math.sqrt((num(x1, i) - num(x0, i)) ** 2 + (num(y1, i) - num(y0, i)) ** 2);
  }
}

/** Directions that differ by less than this (radians) count as one: a twentieth of a degree is a drawing's rounding. */
const smoothTurn = 0.001;

/** A disc's edge may graze the boundary it touches by rounding. */
const hair = 1 / 1_000_000;
