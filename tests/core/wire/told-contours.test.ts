import { describe, expect, it } from 'vitest';
import type { Contour } from '../../../core/geometry/contour';
import { arcOf } from '../../../core/geometry/contour-measures';
import { toldContours } from '../../../core/wire/told-contours';
import { polygon } from '../../support/shapes';

const arcs = (contour: Contour) =>
  contour.flatMap((from, i) => {
    const to = contour[(i + 1) % contour.length];
    return to && from.bulge !== 0 ? [arcOf(from, to).radius] : [];
  });

// Inside corners of a die opening of 90°, 90°, 170°, 100° and 90°.
const bent = Math.tan(Math.PI / 18);
const opening = polygon([0, 0], [10, 0], [10, 8], [5, 8 + 5 * bent], [0, 8 + 5 * bent]);

describe('what a control is told that offsets by itself', () => {
  it('has inside arcs larger than the offset, by half a micrometre or two and a half last decimals', () => {
    const [fine = []] = toldContours([opening], 'die', 0.145, 0.00001);
    expect(arcs(fine)).toEqual(Array(4).fill(expect.closeTo(0.1455, 9)));
    const [coarse = []] = toldContours([opening], 'die', 0.145, 0.001);
    expect(arcs(coarse)).toEqual(Array(4).fill(expect.closeTo(0.1475, 9)));
  });

  it('keeps the corner of two straights that turn little where it is drawn', () => {
    const [told = []] = toldContours([opening], 'die', 0.145, 0.001);
    const corner = told.filter(({ x, y }) => Math.hypot(x - 5, y - 8 - 5 * bent) < 1e-9);
    expect(corner).toHaveLength(1);
    expect(corner[0]?.bulge).toBe(0);
  });

  it('leaves outside corners to the control', () => {
    const [told = []] = toldContours([opening], 'punch', 0.145, 0.001);
    expect(told).toHaveLength(opening.length);
    expect(arcs(told)).toEqual([]);
  });
});
