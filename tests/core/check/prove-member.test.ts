import { describe, expect, it } from 'vitest';
import { proveMember, type FinishedLoop } from '../../../core/check/prove-member';
import type { Contour } from '../../../core/geometry/contour';
import { reversedContour } from '../../../core/geometry/contour-measures';
import { offsetRegion } from '../../../core/geometry/offset-region';
import { tolerance } from '../../../core/geometry/tolerance';
import { angleShape, circle, polygon, roundedRectangle, square } from '../../support/shapes';

const reach = 0.145;
/** What the polygons of the proof may be off by: their chord error on both sides and the grid. */
const accuracy = 2 * tolerance.proofChord + 0.00002;

const inside = (loops: readonly Contour[]): FinishedLoop[] =>
  loops.map((loop) => ({ waste: 'inside', loop }));
const around = (loops: readonly Contour[]): FinishedLoop[] =>
  loops.map((loop) => ({ waste: 'outside', loop }));

describe('proveMember', () => {
  it('a die opening and a punch whose path keeps the cutting radius pass, their gouge within the accuracy', () => {
    const outline = roundedRectangle(12, 7, 1);
    const die = proveMember([outline], 'die', inside(offsetRegion([outline], -reach)), reach);
    const punch = proveMember([outline], 'punch', around(offsetRegion([outline], reach)), reach);
    for (const proof of [die, punch]) {
      expect(proof.passed).toBe(true);
      expect(proof.gouge).toBeLessThan(accuracy);
      expect(proof.remainder).toBeLessThan(accuracy);
    }
  });

  it.each([0.0006, 0.001, 0.05])('a path %d mm too near is a gouge of that depth and fails', (slip) => {
    const outline = square(8);
    const die = proveMember([outline], 'die', inside(offsetRegion([outline], -(reach - slip))), reach);
    expect(die.passed).toBe(false);
    expect(Math.abs(die.gouge - slip)).toBeLessThan(accuracy);
    const punch = proveMember([outline], 'punch', around(offsetRegion([outline], reach - slip)), reach);
    expect(punch.passed).toBe(false);
    expect(Math.abs(punch.gouge - slip)).toBeLessThan(accuracy);
    const [x, y] = [punch.gougeAt?.x ?? NaN, punch.gougeAt?.y ?? NaN];
    expect(Math.min(Math.abs(x), Math.abs(x - 8), Math.abs(y), Math.abs(y - 8))).toBeLessThan(
      slip + accuracy,
    );
  });

  it('what a square corner keeps is R (√2 − 1), measured from the corner to the sweep', () => {
    const outline = square(8);
    const { passed, remainder, remainderAt } = proveMember(
      [outline],
      'die',
      inside(offsetRegion([outline], -reach)),
      reach,
    );
    expect(passed).toBe(true);
    expect(Math.abs(remainder - reach * (Math.SQRT2 - 1))).toBeLessThan(accuracy);
    expect([0, 8]).toContain(Math.round((remainderAt?.x ?? NaN) * 1e6) / 1e6);
  });

  it('a loop left out leaves its whole pocket, and no loop at all proves nothing', () => {
    const pockets = [square(3), square(3, 10, 0)];
    const half = proveMember(pockets, 'die', inside(offsetRegion([square(3)], -reach)), reach);
    // The centre of the pocket that is not cut is 10 to 13 mm from the path that is.
    expect(half.remainder).toBeGreaterThan(6);
    expect(proveMember(pockets, 'die', [], reach).passed).toBe(false);
  });

  it('a slot closed by the path, and a path across the member, are found', () => {
    const outline = angleShape(10, 4);
    const shortCut = offsetRegion([polygon([0, 0], [10, 0], [10, 4], [4, 10], [0, 10])], reach);
    const proof = proveMember([outline], 'punch', around(shortCut), reach);
    expect(proof.passed).toBe(true);
    expect(proof.remainder).toBeGreaterThan(3.9);
    const across = proveMember([outline], 'punch', around(offsetRegion([circle(4, 4, 4)], reach)), reach);
    expect(across.passed).toBe(false);
    expect(across.gouge).toBeGreaterThan(1);
  });

  /** A square opening with a tooth of steel that stands into it from above. */
  const toothed = (height: number, width = 2): Contour =>
    polygon(
      [0, 0],
      [10, 0],
      [10, 10],
      [5 + width / 2, 10],
      [5 + width / 2, 10 - height],
      [5 - width / 2, 10 - height],
      [5 - width / 2, 10],
      [0, 10],
    );

  it.each([2, 1, 2 * reach, reach, 0.01])(
    'a tooth %d mm high that the path cuts off is a gouge',
    (height) => {
      const proof = proveMember([toothed(height)], 'die', inside(offsetRegion([square(10)], -reach)), reach);
      expect(proof.passed).toBe(false);
      expect(proof.gouge).toBeGreaterThan(Math.min(height, reach) - accuracy);
      const { x, y } = proof.gougeAt ?? { x: NaN, y: NaN };
      expect([x > 3.9 && x < 6.1, y > 9.7 - height]).toEqual([true, true]);
    },
  );

  it('an island that the loop runs round is cut off, though the path keeps its distance from it', () => {
    const ring = [circle(5), reversedContour(circle(2))];
    const proof = proveMember(ring, 'die', inside([circle(2 + reach)]), reach);
    expect(proof.passed).toBe(false);
    expect(proof.gouge).toBeGreaterThan(1);
  });

  it.each([2, 0.01])(
    'a bump of %d mm that the path leaves in the middle of an edge is a remainder',
    (height) => {
      const proof = proveMember([square(10)], 'die', inside(offsetRegion([toothed(height)], -reach)), reach);
      expect(proof.passed).toBe(true);
      const known = reach * (Math.SQRT2 - 1);
      expect(Math.abs(proof.remainder - Math.max(height, known))).toBeLessThan(accuracy);
    },
  );

  it('says the same in tiles as in one piece: many teeth, one of them cut too deep', () => {
    const teeth = 300;
    const comb = polygon(
      [0, 0],
      [2 * teeth, 0],
      ...Array.from({ length: teeth }, (_, k): [number, number][] => {
        const x = 2 * (teeth - k);
        return [
          [x, 3],
          [x - 1, 3],
          [x - 1, 1],
          [x - 2, 1],
        ];
      }).flat(),
    );
    const path = offsetRegion([comb], reach);
    expect(proveMember([comb], 'punch', around(path), reach).passed).toBe(true);
    const slipped = path.map((loop) =>
      loop.map((v) => (v.x > 199.5 && v.x < 200.9 && v.y > 2 ? { ...v, y: v.y - 0.002 } : v)),
    );
    const proof = proveMember([comb], 'punch', around(slipped), reach);
    expect(proof.passed).toBe(false);
    expect(Math.abs(proof.gouge - 0.002)).toBeLessThan(accuracy);
    expect(proof.gougeAt?.x).toBeGreaterThan(198);
    expect(proof.gougeAt?.x).toBeLessThan(202);
  });
});
