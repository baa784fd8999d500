import type { Contour, Point, Region, Vertex } from '../geometry/contour';
import { contourLength, segmentLength } from '../geometry/contour-measures';
import { directionOf, nearestPosition, pointAt } from '../geometry/loop-position';
import { tolerance } from '../geometry/tolerance';
import * as portable from '../geometry/portable-math';

/** A deviation at a place of the designed contour. */
export interface PlacedDeviation {
  readonly foot: Point;
  /** mm, positive out of the material. */
  readonly deviation: number;
}

export interface RealContour {
  readonly region: Region;
  /** The longest way along the contour without a measured point, mm: the whole of a loop where none was measured. */
  readonly widestGap: number;
}

/**
 * The contour as it came out, by measured points: the designed contour moved along its normals by the deviation, which
 * between two neighbouring points changes evenly with the length. As polygons whose chords stay within `proofChord` of
 * the curves. A loop without points stays as designed, and `widestGap` says so.
 */
export function realContour(
  designed: Region,
  points: readonly PlacedDeviation[],
  material: 'inside' | 'outside',
): RealContour {
  const outward = material === 'inside' ? 1 : -1;
  const byLoop = designed.map((): Knot[] => []);
  for (const { foot, deviation } of points) {
    const places = designed.map((contour) => nearestPosition(contour, foot));
    const loop = places.reduce(
      (best, place, k) => (place.distance < (places[best]?.distance ?? Infinity) ? k : best),
      0,
    );
    const place = places[loop];
    const contour = designed[loop];
    if (place && contour) byLoop[loop]?.push({ station: stationOf(contour, place), deviation });
  }
  const loops = designed.map((contour, k) => realLoop(contour, byLoop[k] ?? [], outward));
  return {
    region: loops.map(({ loop }) => loop),
    widestGap: loops.reduce((widest, { gap }) => Math.max(widest, gap), 0),
  };
}

interface Knot {
  readonly station: number;
  readonly deviation: number;
}

function realLoop(contour: Contour, found: readonly Knot[], outward: 1 | -1): { loop: Contour; gap: number } {
  const whole = contourLength(contour);
  const knots = [...found].sort((a, b) => a.station - b.station);
  const first = knots[0];
  if (!first) return { loop: contour, gap: whole };
  const gaps = knots.map(({ station }, k) => (knots[k + 1]?.station ?? first.station + whole) - station);
  const loop: Vertex[] = [];
  let before = 0;
  contour.forEach((from, segment) => {
    const to = contour[(segment + 1) % contour.length] as Vertex;
    const length = segmentLength(from, to);
    const inner = knots
      .map(({ station }) => (station - before) / length)
      .filter((along) => along > 0 && along < 1);
    const shares = [...new Set([...evenShares(from, length), ...inner])].sort((a, b) => a - b);
    for (const along of shares) {
      const by = deviationAt(knots, before + along * length, whole);
      loop.push(
        along === 0
          ? cornerMoved(contour, segment, outward * by)
          : moved(contour, segment, along, outward * by),
      );
    }
    before += length;
  });
  return { loop, gap: gaps.reduce((widest, gap) => Math.max(widest, gap), 0) };
}

/** 0 and, on an arc, as many shares as keep its chords within the proof's. */
function evenShares({ bulge }: Vertex, length: number): readonly number[] {
  if (bulge === 0) return [0];
  const angle = Math.abs(4 * portable.atan(bulge));
  const radius = length / angle;
  const step = 2 * portable.acos(Math.max(0, 1 - tolerance.proofChord / radius));
  const count = Math.max(1, Math.ceil(angle / step));
  return Array.from({ length: count }, (_, k) => k / count);
}

function deviationAt(knots: readonly Knot[], station: number, whole: number): number {
  const after = knots.findIndex((knot) => knot.station > station);
  const next = knots[after < 0 ? 0 : after] as Knot;
  const last = (knots[(after < 0 ? knots.length : after) - 1] ?? knots[knots.length - 1]) as Knot;
  const span = (next.station - last.station + whole) % whole;
  const along = (station - last.station + whole) % whole;
  return span === 0 ? last.deviation : last.deviation + ((next.deviation - last.deviation) * along) / span;
}

function moved(contour: Contour, segment: number, along: number, by: number): Vertex {
  const { x, y } = pointAt(contour, { segment, along });
  const direction = directionOf(contour, { segment, along });
  return { x: x + by * direction.y, y: y - by * direction.x, bulge: 0 };
}

/** A vertex moved so that both segments at it move by the same: along the bisector, at a mitre no longer than a few times that. */
function cornerMoved(contour: Contour, segment: number, by: number): Vertex {
  const vertex = contour[segment] as Vertex;
  const before = directionOf(contour, { segment: (segment + contour.length - 1) % contour.length, along: 1 });
  const after = directionOf(contour, { segment, along: 0 });
  const [nx, ny] = [before.y + after.y, -before.x - after.x];
  const share = 2 / Math.max(nx * nx + ny * ny, shortestBisector);
  return { x: vertex.x + by * share * nx, y: vertex.y + by * share * ny, bulge: 0 };
}

/** Squared sum of two unit normals at which the mitre is four times the shift; sharper corners are cut short. */
const shortestBisector = 0.25;

function stationOf(contour: Contour, { segment, along }: { segment: number; along: number }): number {
  let station = 0;
  for (let k = 0; k < segment; k++) station += segmentLength(contour[k] as Vertex, contour[k + 1] as Vertex);
  return (
    station +
    along * segmentLength(contour[segment] as Vertex, contour[(segment + 1) % contour.length] as Vertex)
  );
}
