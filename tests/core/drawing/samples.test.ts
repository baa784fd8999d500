import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { contourArea } from '../../../core/geometry/contour-measures';
import { codesOf, outline } from './drawn';

const sample = (name: string) =>
  outline(readFileSync(new URL(`../../../samples/${name}.dxf`, import.meta.url), 'latin1'));

describe('samples read as their notes say', () => {
  it('contact spring: one outline, two rivet holes, centre lines and text not used', () => {
    const drawing = sample('rain-gauge-contact-spring');
    expect(drawing.contours.map(({ depth }) => depth)).toEqual([0, 1, 1]);
    expect(codesOf(drawing)).toEqual(['note drawing-not-used']);
    expect(drawing.unused.map(({ layer, count }) => `${count} on ${layer}`)).toEqual([
      '4 on CENTRE',
      '2 on NOTES',
    ]);
    expect(contourArea(drawing.contours[1]?.contour ?? [])).toBeCloseTo(Math.PI * 1.1 ** 2, 9);
  });

  it('hinge leaf: 64 × 30 less two gaps and rounded corners, three holes', () => {
    const drawing = sample('letterbox-hinge-leaf');
    const corners = (radius: number) => radius ** 2 * (1 - Math.PI / 4);
    const area = 64 * 30 - 2 * corners(4) - 2 * (12.8 * 7 - 2 * corners(0.5));
    expect(contourArea(drawing.contours[0]?.contour ?? [])).toBeCloseTo(area, 9);
    expect(drawing.contours).toHaveLength(4);
    expect(codesOf(drawing)).toEqual(['note drawing-not-used']);
  });

  it('striker plate: spline and ellipse become arcs within the tolerance', () => {
    const drawing = sample('bicycle-bell-striker-plate');
    expect(drawing.contours.map(({ depth }) => depth)).toEqual([0, 1, 1]);
    expect(codesOf(drawing)).toEqual(['note curve-fitted', 'note curve-fitted', 'note drawing-not-used']);
    expect(drawing.largestFitError).toBeGreaterThan(0);
    expect(drawing.largestFitError).toBeLessThanOrEqual(0.0005);
  });

  it('heat-sink spacer: inches, twelve vents of 1/8 in from an array', () => {
    const drawing = sample('heat-sink-spacer-inch');
    expect(drawing.unit).toBe('inch');
    expect(drawing.contours).toHaveLength(13);
    expect(drawing.findings).toEqual([]);
    expect(contourArea(drawing.contours[5]?.contour ?? [])).toBeCloseTo(Math.PI * 1.5875 ** 2, 9);
    const close = (value: number): number => expect.closeTo(value, 9) as number;
    expect(drawing.box).toEqual({ minX: close(0), minY: close(0), maxX: close(38.1), maxY: close(25.4) });
  });
});
