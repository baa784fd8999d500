import { describe, expect, it } from 'vitest';
import { tightPlaces } from '../../../core/check/tight-places';
import { asCutRegion } from '../../../core/wire/as-cut';
import { radians } from '../../../core/units';
import { polygon } from '../../support/shapes';

const reach = 0.15;

/** A triangle-like die opening with the given angle at the origin. */
function wedge(angleDeg: number) {
  const a = radians(angleDeg);
  return [polygon([0, 0], [10, 0], [10 * Math.cos(a), 10 * Math.sin(a)])];
}

// Exact geometry: gap R(1/sin(a/2) − 1), area R²(cot(a/2) − (π − a)/2), for a wire of reach R = 0.15 mm.
const rows = [
  { angle: 30, gap: 0.429555, area: 0.054519 },
  { angle: 45, gap: 0.241969, area: 0.027813 },
  { angle: 60, gap: 0.15, area: 0.015409 },
  { angle: 90, gap: 0.062132, area: 0.004829 },
  { angle: 120, gap: 0.023205, area: 0.001209 },
  { angle: 135, gap: 0.012359, area: 0.000484 },
  { angle: 150, gap: 0.005291, area: 0.000138 },
];

describe('remainder at a sharp inside corner', () => {
  for (const { angle, gap, area } of rows) {
    it(`${angle}°`, () => {
      const designed = wedge(angle);
      const asCut = asCutRegion(designed, 'die', reach);
      const { findings, remainders } = tightPlaces({
        memberId: 'blank-c1-die',
        contourId: 'c1',
        role: 'die',
        designed,
        asCut,
        reach,
        wireDiameter: 0.25,
        sparkGap: 0.025,
        corners: [],
        givesSize: true,
      });
      const at = findings.findIndex(({ place }) => Math.hypot(place?.x ?? 1, place?.y ?? 1) < 1e-9);
      expect(findings[at]?.code).toBe('inside-corner');
      expect(findings[at]?.numbers.find(({ label }) => label === 'angle')?.value).toBeCloseTo(
        radians(angle),
        9,
      );
      expect(remainders[at]?.depth).toBeCloseTo(gap, 6);
      expect(remainders[at]?.area).toBeCloseTo(area, 6);
      expect(findings[at]?.cures.some(({ kind }) => kind === 'wire')).toBe(false);
    });
  }

  it('a 90° corner fails a 0.05 mm tolerance, a 120° corner passes it', () => {
    const depth = (angle: number) => reach * (1 / Math.sin(radians(angle) / 2) - 1);
    expect(depth(90)).toBeGreaterThan(0.05);
    expect(depth(120)).toBeLessThan(0.05);
  });
});
