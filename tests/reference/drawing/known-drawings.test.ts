import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { outlineOf, readDrawing } from '../../../core/drawing/read-drawing';
import { contourArea, contourBox, contourLength } from '../../../core/geometry/contour-measures';
import { tolerance } from '../../../core/geometry/tolerance';
import { valueOf } from '../../core/drawing/drawn';

/**
 * Outside source: drawings whose contours are known exactly (tests/fixtures/dxf/README.md), each compared at the
 * tolerance stated with it.
 */
const folder = new URL('../../fixtures/dxf/', import.meta.url);

interface Shape {
  readonly area: number;
  readonly perimeter: number;
  readonly bbox: readonly [number, number, number, number];
}

interface Truth {
  readonly why: string;
  readonly insunits_in_file: number | null;
  readonly drawn_in_mm_per_unit: number;
  readonly max_gap_mm: number;
  readonly tolerance: { readonly perimeter_mm: number; readonly area_mm2: number };
  readonly stray_open_entities: number;
  readonly parts: readonly { readonly outer: Shape; readonly holes: readonly Shape[] }[];
}

const read = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(name, folder)));
const cases = readdirSync(folder)
  .filter((name) => name.endsWith('.dxf'))
  .map((name) => {
    const truth = JSON.parse(readFileSync(new URL(name.replace(/dxf$/, 'json'), folder), 'utf8')) as Truth;
    return { name, why: truth.why, truth };
  });

it('all drawings are there', () => expect(cases).toHaveLength(24));

describe('drawings with known areas and perimeters', () => {
  it.each(cases)('$name: $why', ({ name, truth }) => {
    const raw = valueOf(readDrawing(read(name)));
    expect(raw.statedUnit === null).toBe(truth.insunits_in_file === null);
    const drawing = valueOf(outlineOf(raw, raw.statedUnit ?? 'mm', tolerance.gap));
    const wanted = truth.parts.flatMap(({ outer, holes }) => [
      { ...outer, depth: 0 },
      ...holes.map((hole) => ({ ...hole, depth: 1 })),
    ]);
    const found = drawing.contours.map(({ contour, depth, fitError }) => ({
      area: contourArea(contour),
      perimeter: contourLength(contour),
      box: contourBox(contour),
      depth,
      fitError,
    }));
    const byArea = (a: Shape | { area: number; box: { minX: number } }, b: typeof a): number =>
      Math.round((a.area - b.area) * 100) || left(a) - left(b);
    const left = (shape: Shape | { box: { minX: number } }): number =>
      'bbox' in shape ? shape.bbox[0] : shape.box.minX;
    expect(found).toHaveLength(wanted.length);
    const sorted = [...found].sort(byArea);
    [...wanted].sort(byArea).forEach((want, i) => {
      const got = sorted[i];
      if (!got) throw new Error('missing');
      // Splines and ellipses are arcs within the reported error: the area may be off by the perimeter times that, the
      // perimeter by the turn of the whole contour times that.
      const fit = got.fitError;
      expect(fit).toBeLessThanOrEqual(tolerance.curveFit);
      expect(Math.abs(got.area - want.area)).toBeLessThanOrEqual(
        truth.tolerance.area_mm2 + fit * want.perimeter,
      );
      expect(Math.abs(got.perimeter - want.perimeter)).toBeLessThanOrEqual(
        truth.tolerance.perimeter_mm + fit * 2 * Math.PI,
      );
      const slack = truth.max_gap_mm + fit + 1e-9;
      [got.box.minX, got.box.minY, got.box.maxX, got.box.maxY].forEach((side, k) => {
        expect(Math.abs(side - (want.bbox[k] ?? NaN))).toBeLessThanOrEqual(slack);
      });
      expect(got.depth).toBe(want.depth);
    });
    const open = drawing.findings.filter(({ code }) => code === 'contour-open');
    expect(open).toHaveLength(truth.stray_open_entities);
    expect(drawing.findings.filter(({ weight }) => weight === 'stop')).toEqual([]);
    const gaps = drawing.contours.map(({ largestGap }) => largestGap);
    // Both ends of a gap may have been moved.
    expect(Math.max(...gaps)).toBeLessThanOrEqual(2 * truth.max_gap_mm + tolerance.samePoint);
  });
});
