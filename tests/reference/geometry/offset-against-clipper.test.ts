import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compareOffset } from '../../../build/fuzz/compare-offset';
import { geometryCase, geometryFamilies, type GeometryCase } from '../../../build/fuzz/geometry-cases';

/** A share of `npm run fuzz:geometry`; the seeds beyond are run by that. */
const perFamily = 400;

// Independent route: clipper-lib 6.4.2 (Boost licence), polygons with round joins at a chord error of 0.1 µm.
describe('offset against clipper-lib: area, boundary, loops', () => {
  for (const family of geometryFamilies) {
    it(family, () => {
      let [points, overNanometre] = [0, 0];
      for (let seed = 1; seed <= perFamily; seed++) {
        const { contour, distance } = geometryCase(family, seed);
        const found = compareOffset(contour, distance);
        expect(found.verdict, `seed ${seed}, offset ${distance}: ${found.say}`).not.toBe('differs');
        points += found.points;
        overNanometre += found.overNanometre;
      }
      expect(overNanometre / points).toBeLessThan(0.001);
    });
  }
});

// Each of these lost a loop once; shrunk from a failing seed.
describe('offsets that went wrong once', () => {
  const folder = join(import.meta.dirname, '../../fixtures/offset');
  for (const name of readdirSync(folder)) {
    it(name, () => {
      const { contour, distance } = JSON.parse(readFileSync(join(folder, name), 'utf8')) as GeometryCase;
      const { verdict, say } = compareOffset(contour, distance);
      expect(verdict, say).not.toBe('differs');
    });
  }
});

describe('the comparison itself', () => {
  it('tells a lost loop and a displaced boundary from slivers', () => {
    const { contour } = geometryCase('gear', 1);
    expect(compareOffset(contour, 0.2, []).verdict).toBe('differs');
    expect(compareOffset(contour, 0.2, [contour]).verdict).toBe('differs');
  });
});
