import type { Contour, Point, Vertex } from '../../../core/geometry/contour';
import { arcOf } from '../../../core/geometry/contour-measures';

/** An outline as a polygon whose chords are nowhere farther than `chord` from its arcs. */
export function chordPolygon(outline: Contour, chord: number): Point[] {
  return outline.flatMap((from, i) => {
    if (from.bulge === 0) return [{ x: from.x, y: from.y }];
    const to = outline[(i + 1) % outline.length] as Vertex;
    const { cx, cy, radius } = arcOf(from, to);
    const angle = 4 * Math.atan(from.bulge);
    const steps = Math.max(1, Math.ceil(Math.abs(angle) / chordAngle(chord, radius)));
    return Array.from({ length: steps }, (_, k) => {
      const [cos, sin] = [Math.cos((angle * k) / steps), Math.sin((angle * k) / steps)];
      const [x, y] = [from.x - cx, from.y - cy];
      return { x: cx + x * cos - y * sin, y: cy + x * sin + y * cos };
    });
  });
}

/** The angle whose chord stays within an error of its arc: error = r (1 − cos(angle / 2)). */
export const chordAngle = (chord: number, radius: number): number =>
  2 * Math.acos(Math.max(0, 1 - chord / radius));

/** Chords to a full circle of the offset's radius, in fours as the libraries that ask for them want it. */
export const chordsOfTurn = (chord: number, distance: number): number =>
  4 * Math.ceil(Math.PI / 2 / chordAngle(chord, Math.abs(distance)));

export const asContour = (points: readonly Point[]): Contour =>
  points.map(({ x, y }) => ({ x, y, bulge: 0 }));
