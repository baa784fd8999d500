import { describe, expect, it } from 'vitest';
import { proveMember } from '../../../core/check/prove-member';
import { newCorners } from '../../../core/die/corner-rules';
import { pairCorners } from '../../../core/die/corner-radii';
import { sharpCorners } from '../../../core/die/sharp-corners';
import type { Contour, Region } from '../../../core/geometry/contour';
import { contourArea } from '../../../core/geometry/contour-measures';
import type { MemberRole } from '../../../core/plan';
import { radians } from '../../../core/units';
import { pathLoops } from '../../../core/wire/as-cut';
import { extendedLoops } from '../../../core/wire/corner-extension';
import { bruteDistance, pointsAlong, variants } from '../../support/contour-facts';
import { families, randomContour, seeded } from '../../../build/fuzz/random-contours';
import { angleShape, corner, polygon, quarter, square } from '../../support/shapes';

const offset = 0.15;

const sharpOf = (designed: Region, role: MemberRole, miterLimit = 2) => ({
  corners: sharpCorners({ designed, role, drawn: designed[0] ?? [], offset: 0, corners: [], path: 'sharp' }),
  miterLimit,
});
const sharpPath = (designed: Region, role: MemberRole, miterLimit?: number): Region =>
  pathLoops(designed, role, offset, sharpOf(designed, role, miterLimit));

/** A punch that comes to a point of the angle at the origin. */
const pointed = (angleDeg: number): Contour => {
  const half = radians(angleDeg) / 2;
  const [across, up] = [5 * Math.sin(half), 5 * Math.cos(half)];
  return polygon([0, 0], [across, up], [0, 9], [-across, up]);
};

describe('a sharp path past an outside corner', () => {
  // Exact geometry: the offset edges meet d / sin(a/2) from the corner, along the bisector.
  for (const angle of [60, 75, 90, 120, 150]) {
    it(`${angle}°: the tip is d / sin(a/2) away, d / tan(a/2) beyond the ends of the arc`, () => {
      for (const contour of variants(pointed(angle))) {
        const at = contour.find((_, i) => isApex(contour, i, radians(angle))) ?? corner(0, 0);
        const [loop] = sharpPath([contour], 'punch');
        const tip = nearestVertex(loop ?? [], at);
        expect(Math.hypot(tip.x - at.x, tip.y - at.y)).toBeCloseTo(offset / Math.sin(radians(angle) / 2), 9);
        const before = (loop ?? []).every(({ bulge }) => bulge === 0);
        expect(before).toBe(true);
      }
    });
  }

  it('beyond the miter limit the tip is cut off square, at the limit', () => {
    const [loop] = sharpPath([pointed(30)], 'punch', 2);
    const tips = (loop ?? []).filter(({ x, y }) => Math.hypot(x, y) < 1);
    expect(tips).toHaveLength(2);
    for (const { y } of tips) expect(y).toBeCloseTo(-2 * offset, 9);
    const half = radians(15);
    // On the offset edge: its distance from the edge's line is d.
    for (const { x, y } of tips)
      expect(Math.abs(x) * Math.cos(half) - y * Math.sin(half)).toBeCloseTo(offset, 9);
    expect(sharpPath([pointed(30)], 'punch', 4)[0]?.filter(({ x, y }) => Math.hypot(x, y) < 1)).toHaveLength(
      1,
    );
  });

  it('between a line and an arc the tangents are extended', () => {
    // A quarter disc: at (10, 0) line and arc meet at 90°, the tangents' extensions as well.
    const disc = [corner(0, 0), corner(10, 0, quarter), corner(0, 10)];
    const [loop] = sharpPath([disc], 'punch');
    expect(nearestVertex(loop ?? [], { x: 10.15, y: -0.15 })).toMatchObject({ bulge: 0 });
    const tip = nearestVertex(loop ?? [], { x: 10.15, y: -0.15 });
    expect(tip.x).toBeCloseTo(10.15, 9);
    expect(tip.y).toBeCloseTo(-0.15, 9);
  });

  it('a die has its outside corners where the contour turns right', () => {
    const [loop] = sharpPath([angleShape(10, 4)], 'die');
    const tip = nearestVertex(loop ?? [], { x: 4, y: 4 });
    expect([tip.x, tip.y]).toEqual([expect.closeTo(3.85, 9), expect.closeTo(3.85, 9)]);
    expect(loop).toHaveLength(6);
  });

  it('rolls where the extension would come too near to another edge, and says where', () => {
    // A slot 0.32 wide beside the corner: the wire (0.30) fits, the tip of the extension does not.
    const notched = polygon([0, 0], [10, 0], [10, 6], [5.32, 6], [5.32, 6.8], [5, 6.8], [5, 6], [0, 6]);
    const wall = polygon(
      [0, 0],
      [10, 0],
      [10, 10],
      [6, 10],
      [6, 7],
      [7, 7],
      [7, 6.68],
      [5.7, 6.68],
      [5.7, 10],
      [0, 10],
    );
    const sharp = sharpOf([wall], 'punch');
    const { loops, rolled } = extendedLoops(pathLoops([wall], 'punch', offset), [wall], offset, sharp);
    expect(rolled.length).toBeGreaterThan(0);
    for (const loop of loops)
      for (const { x, y } of pointsAlong(loop, 5))
        expect(bruteDistance([wall], x, y)).toBeGreaterThan(offset - 1e-6);
    expect(
      extendedLoops(pathLoops([notched], 'punch', offset), [notched], offset, sharpOf([notched], 'punch'))
        .rolled,
    ).toEqual([]);
  });
});

it('the job chooses single corners: a corner of the member is known by the two edges it comes from', () => {
  const drawn = angleShape(10, 4);
  const rules = {
    ...newCorners,
    exceptions: [{ contourId: 'c1', x: 10, y: 0, inside: null, outside: null, path: 'sharp' as const }],
  };
  const { corners } = pairCorners({
    contourId: 'c1',
    drawn,
    use: 'blank',
    clearance: 0.06,
    reach: { die: 0.15, punch: 0.15 },
    rules,
    sizeShift: 0,
  });
  const punch = polygon([0.06, 0.06], [9.94, 0.06], [9.94, 3.94], [3.94, 3.94], [3.94, 9.94], [0.06, 9.94]);
  const chosen = sharpCorners({
    designed: [punch],
    role: 'punch',
    drawn,
    offset: -0.06,
    corners,
    path: 'rolling',
  });
  expect(chosen).toEqual([{ x: 9.94, y: 0.06, turn: expect.closeTo(Math.PI / 2, 9) }]);
  const rest = sharpCorners({
    designed: [punch],
    role: 'punch',
    drawn,
    offset: -0.06,
    corners: corners.map((one) =>
      one.exception ? { ...one, exception: { ...one.exception, path: 'rolling' } } : one,
    ),
    path: 'sharp',
  });
  expect(rest.map(({ x, y }) => [x, y])).toEqual([
    [0.06, 0.06],
    [9.94, 3.94],
    [3.94, 9.94],
    [0.06, 9.94],
  ]);
});

// clipper-lib proves the member independently of how the path runs round its corners.
describe('the member is the same with a sharp path', () => {
  const prove = (contour: Contour, role: MemberRole, sharp: boolean) => {
    const designed = [contour];
    const loops = pathLoops(designed, role, offset, sharp ? sharpOf(designed, role) : undefined);
    const finished = loops.map((loop) => ({
      waste: role === 'die' || contourArea(loop) < 0 ? ('inside' as const) : ('outside' as const),
      loop,
    }));
    return proveMember(designed, role, finished, offset);
  };
  it('a square punch is left whole, its corners sharp', () => {
    const proof = prove(square(10), 'punch', true);
    expect(proof.passed).toBe(true);
    expect(proof.gouge).toBeLessThan(0.0005);
    expect(proof.remainder).toBeLessThan(0.0005);
  });
  for (const family of Object.keys(families)) {
    it(`random contours: ${family}`, () => {
      for (let seed = 1; seed <= 6; seed++) {
        const contour = randomContour(family, seeded(seed));
        for (const role of ['die', 'punch'] as const) {
          const [rolling, sharp] = [prove(contour, role, false), prove(contour, role, true)];
          expect(sharp.gouge).toBeLessThan(Math.max(0.0005, rolling.gouge + 0.0002));
          expect(sharp.remainder).toBeLessThan(rolling.remainder + 0.0005);
          const loops = sharpPath([contour], role);
          for (const loop of loops)
            for (const { x, y } of pointsAlong(loop, 4))
              expect(bruteDistance([contour], x, y)).toBeGreaterThan(offset - 1e-6);
        }
      }
    });
  }
});

function nearestVertex(loop: Contour, to: { x: number; y: number }) {
  const sorted = [...loop].sort(
    (a, b) => Math.hypot(a.x - to.x, a.y - to.y) - Math.hypot(b.x - to.x, b.y - to.y),
  );
  return sorted[0] ?? corner(Number.NaN, Number.NaN);
}

/** Whether the contour has its point of the angle at vertex i: the only such angle between edges 5 mm long. */
function isApex(contour: Contour, i: number, angle: number): boolean {
  const [before, at, after] = [contour.at(i - 1), contour[i], contour[(i + 1) % contour.length]];
  if (!before || !at || !after) return false;
  const [a, b] = [Math.hypot(before.x - at.x, before.y - at.y), Math.hypot(after.x - at.x, after.y - at.y)];
  const between = ((before.x - at.x) * (after.x - at.x) + (before.y - at.y) * (after.y - at.y)) / (a * b);
  return Math.abs(a - 5) < 1e-9 && Math.abs(b - 5) < 1e-9 && Math.abs(Math.acos(between) - angle) < 1e-9;
}
