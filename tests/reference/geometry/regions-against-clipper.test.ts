import ClipperLib from 'clipper-lib';
import { describe, expect, it } from 'vitest';
import { clipperOpened, flattened } from '../../../build/fuzz/clipper-offset';
import {
  combined,
  comparedChord,
  compareWithPolygons,
  reachesBeyond,
} from '../../../build/fuzz/compare-with-polygons';
import { geometryFamilies } from '../../../build/fuzz/geometry-cases';
import { randomContour, seeded } from '../../../build/fuzz/random-contours';
import { combineRegions } from '../../../core/geometry/combine-regions';
import type { Region } from '../../../core/geometry/contour';
import { openRegion } from '../../../core/geometry/open-region';

const flat = (region: Region) => region.map((contour) => flattened(contour, comparedChord));

// Independent route: clipper-lib 6.4.2 (Boost licence), polygons at a chord error of 0.1 µm.
describe('union, difference and intersection against clipper-lib: area, boundary, loops', () => {
  const operations = {
    union: ClipperLib.ClipType.ctUnion,
    difference: ClipperLib.ClipType.ctDifference,
    intersection: ClipperLib.ClipType.ctIntersection,
  } as const;
  for (const family of geometryFamilies) {
    it(family, () => {
      const verdicts = { same: 0, sliver: 0, differs: 0 };
      for (let seed = 1; seed <= 100; seed++) {
        const random = seeded(seed * 15_485_863);
        const a: Region = [randomContour(family, random)];
        const [dx, dy] = [random() * 4 - 2, random() * 4 - 2];
        const b: Region = [randomContour(family, random).map((v) => ({ ...v, x: v.x + dx, y: v.y + dy }))];
        for (const operation of ['union', 'difference', 'intersection'] as const) {
          const theirs = combined(flat(a), flat(b), operations[operation]);
          const { verdict, say } = compareWithPolygons(combineRegions(a, b, operation), theirs);
          verdicts[verdict]++;
          expect(verdict, `${operation}, seed ${seed}: ${say}`).not.toBe('differs');
        }
      }
      // Arcs that cross at a shallow angle cross elsewhere in polygons: thin, but not the same point by point.
      expect(verdicts.same / 300).toBeGreaterThan(0.8);
    });
  }
});

/**
 * A neck as wide as the disc passes or stops it by less than a chord error, so openings are not compared point by point:
 * what a slightly larger disc sweeps lies inside ours, what a slightly smaller one sweeps holds ours.
 */
describe('opening between two of clipper-lib, with radii 0.4 µm apart', () => {
  const room = 2 * comparedChord;
  for (const family of geometryFamilies) {
    it(family, () => {
      let wide = 0;
      for (let seed = 1; seed <= 60; seed++) {
        const random = seeded(seed * 32_452_843);
        const contour: Region = [randomContour(family, random)];
        const radius = 0.05 + random() * 0.6;
        const ours = flat(openRegion(contour, radius));
        if (ours.length > 0) wide++;
        expect(
          reachesBeyond(clipperOpened(contour, radius + room, comparedChord), ours),
          `seed ${seed}: swept by a larger disc but not by ours`,
        ).toBe(false);
        expect(
          reachesBeyond(ours, clipperOpened(contour, radius - room, comparedChord)),
          `seed ${seed}: swept by ours but not by a smaller disc`,
        ).toBe(false);
      }
      expect(wide).toBeGreaterThan(5);
    });
  }
});

describe('the comparison itself', () => {
  it('sees a disc too large, and a difference taken the wrong way round', () => {
    const random = seeded(3);
    const a: Region = [randomContour('gear', random)];
    const b: Region = [randomContour('gear', random).map((v) => ({ ...v, x: v.x + 1 }))];
    expect(reachesBeyond(flat(a), clipperOpened(a, 0.3, comparedChord))).toBe(true);
    const theirs = combined(flat(b), flat(a), ClipperLib.ClipType.ctDifference);
    expect(compareWithPolygons(combineRegions(a, b, 'difference'), theirs).verdict).toBe('differs');
  });
});
