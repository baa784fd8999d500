import { describe, expect, it } from 'vitest';
import { areaMoments } from '../../../core/geometry/area-moments';
import { contourArea, contourLength, reversedContour } from '../../../core/geometry/contour-measures';
import { perimeterCentroid } from '../../../core/geometry/perimeter-centroid';
import type { Contour } from '../../../core/geometry/contour';
import { pointsAlong, variants } from '../../support/contour-facts';
import {
  angleShape,
  circle,
  corner,
  polygon,
  roundedRectangle,
  roundedSlot,
  square,
} from '../../support/shapes';

// Closed forms of strength of materials: rectangle b·h³/12, circle π·r⁴/4, half disc (π/8 − 8/(9π))·r⁴ about its
// centroid, which lies 4r/(3π) above the diameter.
describe('area moments against closed forms', () => {
  it('rectangle', () => {
    const moments = areaMoments([polygon([3, 4], [13, 4], [13, 8], [3, 8])]);
    expect(moments?.area).toBeCloseTo(40, 10);
    expect(moments?.centroid.x).toBeCloseTo(8, 12);
    expect(moments?.centroid.y).toBeCloseTo(6, 12);
    expect(moments?.least).toBeCloseTo((10 * 4 ** 3) / 12, 9);
    expect(moments?.greatest).toBeCloseTo((4 * 10 ** 3) / 12, 9);
    expect(Math.sin(moments?.weakAxis ?? 1)).toBeCloseTo(0, 12);
  });

  it('circle and ring', () => {
    for (const [x, y] of [
      [0, 0],
      [1000, -2000],
    ] as const) {
      const disc = areaMoments([circle(3, x, y)]);
      expect(disc?.least).toBeCloseTo((Math.PI * 81) / 4, 6);
      expect(disc?.greatest).toBeCloseTo((Math.PI * 81) / 4, 6);
      const ring = areaMoments([circle(3, x, y), reversedContour(circle(2, x, y))]);
      expect(ring?.least).toBeCloseTo((Math.PI * (81 - 16)) / 4, 6);
    }
  });

  it('half disc', () => {
    const moments = areaMoments([[corner(2, 0, 1), corner(-2, 0)]]);
    expect(moments?.area).toBeCloseTo(2 * Math.PI, 12);
    expect(moments?.centroid.y).toBeCloseTo((4 * 2) / (3 * Math.PI), 12);
    expect(moments?.least).toBeCloseTo((Math.PI / 8 - 8 / (9 * Math.PI)) * 16, 10);
    expect(moments?.greatest).toBeCloseTo((Math.PI / 8) * 16, 10);
  });

  it('a square turned by 30° bends alike everywhere; a turned rectangle along its own axis', () => {
    const turn = (contour: Contour, a: number): Contour =>
      contour.map(({ x, y, bulge }) => ({
        x: x * Math.cos(a) - y * Math.sin(a),
        y: x * Math.sin(a) + y * Math.cos(a),
        bulge,
      }));
    const quadratic = areaMoments([turn(square(6), 0.5)]);
    expect(quadratic?.least).toBeCloseTo(6 ** 4 / 12, 9);
    expect(quadratic?.greatest).toBeCloseTo(6 ** 4 / 12, 9);
    const bar = areaMoments([turn(polygon([0, 0], [9, 0], [9, 2], [0, 2]), 0.3)]);
    expect(bar?.weakAxis).toBeCloseTo(0.3, 12);
    expect(bar?.least).toBeCloseTo((9 * 8) / 12, 10);
  });

  it('agrees with the signed area on shapes with arcs, whatever their start and direction', () => {
    for (const shape of [roundedRectangle(20, 10, 3), roundedSlot(8, 2), angleShape(10, 3)]) {
      for (const variant of variants(shape)) {
        expect(areaMoments([variant])?.area).toBeCloseTo(contourArea(variant), 8);
      }
    }
  });

  it('nothing has no moments', () => {
    expect(areaMoments([])).toBeNull();
    expect(areaMoments([reversedContour(square(2))])).toBeNull();
  });
});

// Closed forms: a half circle line balances 2r/π from its centre, a quarter circle line 2√2·r/π.
describe('centroid of the boundary line', () => {
  it('half circle with its diameter', () => {
    const at = perimeterCentroid([[corner(5, 0, 1), corner(-5, 0)]]);
    const arc = Math.PI * 5;
    expect(at?.length).toBeCloseTo(arc + 10, 12);
    expect(at?.x).toBeCloseTo(0, 12);
    expect(at?.y).toBeCloseTo((arc * ((2 * 5) / Math.PI)) / (arc + 10), 12);
  });

  it('two circles balance by their lengths', () => {
    const at = perimeterCentroid([circle(3), circle(1, 20, 0)]);
    expect(at?.x).toBeCloseTo((20 * 1) / (3 + 1), 12);
    expect(at?.y).toBeCloseTo(0, 12);
  });

  it('agrees with a fine sum of points, on every variant', () => {
    for (const variant of variants(roundedRectangle(20, 10, 3))) {
      const at = perimeterCentroid([variant]);
      const length = contourLength(variant);
      // Points at equal lengths: the mean of the points approaches the centroid.
      const chords = pointsAlong(variant, 4000);
      let [x, y, sum] = [0, 0, 0];
      chords.forEach((p, i) => {
        const q = chords[(i + 1) % chords.length] ?? p;
        const own = Math.hypot(q.x - p.x, q.y - p.y);
        x += (own * (p.x + q.x)) / 2;
        y += (own * (p.y + q.y)) / 2;
        sum += own;
      });
      expect(sum).toBeCloseTo(length, 5);
      expect(at?.x).toBeCloseTo(x / sum, 6);
      expect(at?.y).toBeCloseTo(y / sum, 6);
    }
  });

  it('nothing balances nowhere', () => {
    expect(perimeterCentroid([])).toBeNull();
  });
});
