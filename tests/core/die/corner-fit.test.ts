import { expect, it } from 'vitest';
import { memberFit } from '../../../core/check/member-fit';
import { cornerFit } from '../../../core/die/corner-fit';
import { pairContours } from '../../../core/die/pair-contours';
import { pairCorners } from '../../../core/die/corner-radii';
import { newCorners, type CornerException } from '../../../core/die/corner-rules';
import type { Region } from '../../../core/geometry/contour';
import { contourBox } from '../../../core/geometry/contour-measures';
import { radians } from '../../../core/units';
import { asCutRegion } from '../../../core/wire/as-cut';
import { polygon } from '../../support/shapes';

const clearance = 0.06;
const reach = { die: 0.15, punch: 0.15 };

/** A kite: corners of the angle at the origin and above it, wide ones to the sides. */
function kite(angle: number) {
  const half = radians(angle) / 2;
  return polygon(
    [0, 0],
    [5 * Math.sin(half), 5 * Math.cos(half)],
    [0, 10 * Math.cos(half)],
    [-5 * Math.sin(half), 5 * Math.cos(half)],
  );
}

const lowestOf = (region: Region): number => Math.min(...region.map((loop) => contourBox(loop).minY));

function fitsOf(use: 'blank' | 'pierce', angle: number, own: Partial<CornerException>) {
  const drawn = kite(angle);
  const query = { contourId: 'c1', drawn, use, clearance, reach, sizeShift: 0 };
  // The same choice at all four corners, so that the whole contour shows what one corner comes to.
  const exceptions = drawn.map(({ x, y }) => ({
    contourId: 'c1',
    x,
    y,
    inside: null,
    outside: null,
    path: null,
    ...own,
  }));
  const ruled = pairCorners({ ...query, rules: { ...newCorners, exceptions } });
  const { die, punch } = pairContours(drawn, use, clearance, ruled);
  const [corner] = ruled.corners;
  if (!corner) throw new Error('no corner');
  const [punchAsCut, dieAsCut] = [
    asCutRegion(punch, 'punch', reach.punch),
    asCutRegion(die, 'die', reach.die),
  ];
  return {
    corner: cornerFit(corner, clearance, reach),
    measured: memberFit(punchAsCut, dieAsCut),
    // The first corner points straight down.
    lowest: lowestOf(punchAsCut) - lowestOf(dieAsCut),
  };
}

for (const use of ['blank', 'pierce'] as const) {
  for (const angle of [60, 90]) {
    it(`${use}, ${angle}°: a sharp punch in the wire's fillet, as measured between the members`, () => {
      const { corner, measured } = fitsOf(use, angle, {});
      expect(corner.insideRadius).toBeCloseTo(0.15, 12);
      expect(corner.across).toBeCloseTo(measured?.least ?? NaN, 9);
      expect(corner.matching.outside).toBeCloseTo(0.09, 12);
      // The wire cannot make the die's fillet smaller.
      expect(corner.matching.inside).toBeNull();
    });

    it(`${use}, ${angle}°: matched, either way round, the clearance is even all round`, () => {
      for (const own of [
        { inside: { rule: 'radius', radius: 0.4 }, outside: { rule: 'match' } },
        { inside: { rule: 'match' }, outside: { rule: 'radius', radius: 0.4 } },
      ] as const) {
        const { corner, measured } = fitsOf(use, angle, own);
        expect(corner.matching).toEqual({ outside: null, inside: null });
        expect(corner.across).toBeCloseTo(clearance, 12);
        expect(measured?.least).toBeCloseTo(clearance, 9);
        expect(measured?.greatest).toBeCloseTo(clearance, 9);
      }
    });

    it(`${use}, ${angle}°: a punch rounded more than the die's fillet leaves too much across the corner`, () => {
      const { corner, lowest } = fitsOf(use, angle, { outside: { rule: 'radius', radius: 0.4 } });
      expect(corner.across).toBeCloseTo(lowest, 9);
      expect(corner.across).toBeGreaterThan(clearance);
      expect(corner.matching.outside).toBeCloseTo(0.09, 12);
      expect(corner.matching.inside).toBeCloseTo(0.46, 12);
    });
  }
}
