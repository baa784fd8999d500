import type { Chain, Vertex } from './contour';
import { tolerance } from './tolerance';
import * as portable from './portable-math';

/**
 * A chain in which neighbours that lie on one line or one circle are one segment, as long as it stays within a half
 * turn, and the farthest that a point left out lies from the merged segment (at most the on-curve tolerance).
 */
export function mergeArcs(chain: Chain): { readonly chain: Chain; readonly largestShift: number } {
  const merged: Vertex[] = [];
  let largestShift = 0;
  for (let i = 0; i < chain.length; i++) {
    const vertex = chain[i] as Vertex;
    const before = merged[merged.length - 1];
    const next = chain[i + 1];
    const joined = before && next ? joinedBulge(before, vertex, next) : null;
    if (before && joined) {
      merged[merged.length - 1] = { x: before.x, y: before.y, bulge: joined.bulge };
      largestShift = Math.max(largestShift, joined.shift);
    } else merged.push(vertex);
  }
  return { chain: merged, largestShift };
}

/** The bulge of one segment from `a` to `c` that passes through `b`, or null where the two segments do not share a carrier. */
function joinedBulge(a: Vertex, b: Vertex, c: Vertex): { bulge: number; shift: number } | null {
  const angle = 4 * portable.atan(a.bulge) + 4 * portable.atan(b.bulge);
  if (Math.abs(angle) > Math.PI + tolerance.tangentAngle || a.bulge * b.bulge < 0) return null;
  // Two quarter turns may add up to a half turn and a rounding error.
  const bulge = Math.max(-1, Math.min(1, portable.tan(angle / 4)));
  const chordX = c.x - a.x;
  const chordY = c.y - a.y;
  const chord = Math.hypot(chordX, chordY);
  if (chord <= tolerance.samePoint) return null;
  // Same carrier: same curvature (2 sin(angle/2) / chord), no corner between, and the middle point on the merged arc.
  const qx = b.x - a.x;
  const qy = b.y - a.y;
  const curvature = (2 * portable.sin(angle / 2)) / chord;
  const way = portable.atan2(chordY, chordX) - angle / 2;
  const f = qy * portable.cos(way) - qx * portable.sin(way) - (curvature / 2) * (qx * qx + qy * qy);
  const shift = Math.abs((2 * f) / (1 + Math.sqrt(Math.max(0, 1 - 2 * curvature * f))));
  const firstTurn =
    2 * portable.asin(Math.min(1, Math.abs(curvature) * Math.hypot(qx, qy) * 0.5)) * Math.sign(curvature);
  const sagittaSlip = (Math.abs(firstTurn - 4 * portable.atan(a.bulge)) * Math.hypot(qx, qy)) / 8;
  if (shift > tolerance.onCurve || sagittaSlip > tolerance.onCurve) return null;
  if (qx * chordX + qy * chordY <= 0 || qx * chordX + qy * chordY >= chord * chord) return null;
  return {
    bulge: Math.abs(bulge) < tolerance.straightBulge ? 0 : bulge,
    shift: Math.max(shift, sagittaSlip),
  };
}
