import { describe, expect, it } from 'vitest';
import { ruledDeviations } from '../../../core/check/ruled-surface';
import type { Contour, Point, Region } from '../../../core/geometry/contour';
import { offsetRegion } from '../../../core/geometry/offset-region';
import { radians } from '../../../core/units';
import { asCutRegion, pathLoops } from '../../../core/wire/as-cut';
import { chordedPairs } from '../../../core/wire/taper-chords';
import { pointOfSegment } from '../../../core/wire/taper-chain';
import { taperedLoop, type TaperCorners, type TaperLoop } from '../../../core/wire/taper-loop';
import { pointsAlong } from '../../support/contour-facts';
import { angleShape, circle, polygon, roundedRectangle, roundedSlot } from '../../support/shapes';

/** Half of a 0.25 mm wire and 0.025 mm gap, square to the wire. */
const cuttingRadius = 0.15;
const height = 22;

interface Tapered {
  readonly loop: TaperLoop;
  readonly wallAt: (share: number) => Region;
}

/** A die opening tapered over its height: path and wanted wall. */
function tapered(designed: Contour, angleDeg: number, corners: TaperCorners, chord?: number): Tapered {
  const angle = radians(angleDeg);
  const growth = height * Math.tan(angle);
  const level = cuttingRadius / Math.cos(angle);
  const [lower] = pathLoops([designed], 'die', level);
  const made = taperedLoop(lower ?? [], growth, corners);
  if (!made.ok) throw new Error(`no taper at ${made.at.x}, ${made.at.y}`);
  const land = asCutRegion([designed], 'die', level);
  const wallAt = (share: number): Region => {
    if (share === 0) return land;
    if (corners === 'conical') return offsetRegion(land, growth * share);
    const wall = taperedLoop(land[0] ?? [], growth * share, corners);
    if (!wall.ok) throw new Error('no wall');
    return [wall.loop.map(({ upper }) => upper)];
  };
  const [first] = made.loop;
  const loop =
    chord === undefined || !first
      ? made.loop
      : chordedPairs([...made.loop, first], { tolerance: chord, circular: false }).slice(0, -1);
  return { loop, wallAt };
}

/**
 * How far a point of the wall is from the steel that the wire leaves, by brute force in space: the nearest of all
 * positions of the wire's axis, a straight line from the lower path to the upper one, less the cutting radius. Shares
 * nothing with the program but the two paths. Positive: stock is left. Square to the wire.
 */
function stockAt(loop: TaperLoop, point: readonly [number, number, number]): number {
  let nearest = Infinity;
  loop.forEach((own, i) => {
    const next = loop[(i + 1) % loop.length];
    if (!next) return;
    const away = (share: number): number =>
      distanceFromAxis(
        point,
        pointOfSegment(own.lower, next.lower, share),
        pointOfSegment(own.upper, next.upper, share),
      );
    const parts = 8;
    let best = 0;
    for (let k = 1; k <= parts; k++) if (away(k / parts) < away(best)) best = k / parts;
    if (away(best) > nearest + 0.5) return;
    let [low, high] = [Math.max(0, best - 1 / parts), Math.min(1, best + 1 / parts)];
    for (let k = 0; k < 60; k++) {
      const third = (high - low) / 3;
      if (away(low + third) < away(high - third)) high -= third;
      else low += third;
    }
    nearest = Math.min(nearest, away(low));
  });
  return nearest - cuttingRadius;
}

/** Of a point from the straight line through (a, 0) and (b, height). */
function distanceFromAxis([x, y, z]: readonly [number, number, number], a: Point, b: Point): number {
  const axis = [b.x - a.x, b.y - a.y, height] as const;
  const length = Math.hypot(...axis);
  const along = ((x - a.x) * axis[0] + (y - a.y) * axis[1] + z * axis[2]) / length;
  return Math.sqrt(Math.max(0, (x - a.x) ** 2 + (y - a.y) ** 2 + z ** 2 - along ** 2));
}

function bruteDeviation({ loop, wallAt }: Tapered, share: number) {
  const stock = wallAt(share).flatMap((contour) =>
    pointsAlong(contour, 16).map(({ x, y }) => stockAt(loop, [x, y, share * height])),
  );
  return { gouge: Math.max(0, -Math.min(...stock)), remainder: Math.max(0, ...stock) };
}

const shapes: Readonly<Record<string, Contour>> = {
  'a sharp square': polygon([0, 0], [8, 0], [8, 8], [0, 8]),
  'a rounded rectangle': roundedRectangle(10, 6, 0.5),
  'an L with a sharp outside corner': angleShape(10, 4),
  'a wedge of 40° and 100°': polygon([0, 0], [9, 0], [2.5, 2.1]),
  'a circle': circle(4),
  'a slot with round ends': roundedSlot(8, 1.5),
};

describe('the surface that a leaning wire cuts, against every position of the wire in space', () => {
  for (const [name, designed] of Object.entries(shapes)) {
    for (const corners of ['conical', 'constant radius'] as const) {
      for (const angleDeg of [0.5, 10]) {
        for (const chord of [undefined, 0.001]) {
          it(`${name}, ${corners}, ${angleDeg}°, ${chord === undefined ? 'arcs' : 'chords'}`, () => {
            const taper = tapered(designed, angleDeg, corners, chord);
            const planes = ruledDeviations(
              { loops: [taper.loop], wallAt: taper.wallAt, height, cuttingRadius },
              [0, 0.5, 1],
            );
            for (const { share, gouge, remainder } of planes) {
              const brute = bruteDeviation(taper, share);
              // Ours are measured in the plane, the brute ones square to the wire: by the cosine of its lean less.
              const leans = 1.15;
              expect(gouge).toBeGreaterThan(brute.gouge - 2e-6);
              expect(gouge).toBeLessThan(brute.gouge * leans + 2e-6);
              expect(remainder).toBeGreaterThan(brute.remainder - 2e-6);
              expect(remainder).toBeLessThan(brute.remainder * leans + 2e-6);
            }
          });
        }
      }
    }
  }
});

// Exact geometry: square to a wall at angle a the wire reaches r / cos a; where it leans by b in a corner that moves
// whole, tan b = tan a / cos(turn / 2), it reaches r / cos b: the corner is cut deeper by the difference.
it('corners of constant radius are cut deeper by r (1 / cos b − 1 / cos a)', () => {
  for (const angleDeg of [0.5, 3, 10]) {
    const a = radians(angleDeg);
    const b = Math.atan(Math.tan(a) / Math.cos(Math.PI / 4));
    const wanted = cuttingRadius * (1 / Math.cos(b) - 1 / Math.cos(a));
    for (const name of ['a sharp square', 'a rounded rectangle'] as const) {
      const taper = tapered(shapes[name] ?? [], angleDeg, 'constant radius');
      for (const { gouge, remainder } of ruledDeviations(
        { loops: [taper.loop], wallAt: taper.wallAt, height, cuttingRadius },
        [0, 0.5, 1],
      )) {
        expect(gouge).toBeCloseTo(wanted, 7);
        expect(remainder).toBeLessThan(1e-7);
      }
    }
  }
});

// Sagitta: within r (1 − cos(step / 2)) of the arc, so that one step less would be too coarse.
it('chords are as many as their tolerance asks for, and leave stock but never cut into the die', () => {
  const chord = 0.001;
  for (const name of ['a circle', 'a slot with round ends', 'an L with a sharp outside corner'] as const) {
    const taper = tapered(shapes[name] ?? [], 1, 'conical', chord);
    const arcs = tapered(shapes[name] ?? [], 1, 'conical');
    const [, , exit] = ruledDeviations(
      { loops: [taper.loop], wallAt: taper.wallAt, height, cuttingRadius },
      [0, 0.5, 1],
    );
    const [, , smooth] = ruledDeviations(
      { loops: [arcs.loop], wallAt: arcs.wallAt, height, cuttingRadius },
      [0, 0.5, 1],
    );
    expect(exit?.remainder).toBeLessThan(chord * 1.001);
    expect(exit?.remainder).toBeGreaterThan(chord * 0.8);
    expect(exit?.gouge).toBeCloseTo(smooth?.gouge ?? NaN, 7);
  }
});
