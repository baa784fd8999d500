import { describe, expect, it } from 'vitest';
import { contourArea } from '../../../core/geometry/contour-measures';
import { offsetRegion } from '../../../core/geometry/offset-region';
import { clipperOffset } from '../../support/clipper-offset';
import { regionArea, regionLength } from '../../support/contour-facts';
import { families, randomContour, seeded } from '../../support/random-contours';

/** Chord error of the polygons given to clipper-lib, mm. */
const chord = 1e-4;
/** Loops smaller than this are slivers that a chord error may open or close, mm². */
const sliver = 2e-3;
const perFamily = Math.ceil(1000 / Object.keys(families).length);

// Independent route: clipper-lib 6.4.2 (Boost licence), polygons with round joins, on 1,000 random contours.
describe('offset area against clipper-lib', () => {
  for (const family of Object.keys(families)) {
    it(family, () => {
      for (let seed = 1; seed <= perFamily; seed++) {
        const random = seeded(seed * 7919 + family.length);
        const contour = randomContour(family, random);
        // Offsets of exactly half a cell make necks of width zero, where the number of loops is a matter of rounding.
        const distance = (random() - 0.5) * 2 + 1e-3;
        const ours = offsetRegion([contour], distance);
        const theirs = clipperOffset([contour], distance, chord);
        const allowed = 3 * chord * (regionLength(ours) + regionLength([contour]) + 1);
        expect(Math.abs(regionArea(ours) - theirs.area), `seed ${seed}, distance ${distance}`).toBeLessThan(
          allowed,
        );
        const big = (areas: readonly number[]) => areas.filter((area) => Math.abs(area) > sliver).length;
        expect(big(ours.map(contourArea)), `loops, seed ${seed}, distance ${distance}`).toBe(
          big(theirs.loops),
        );
      }
    });
  }
});
