import { describe, expect, test } from 'vitest';
import { distanceOn, distanceProfile, pointOn } from '../../../core/geometry/distance-profile';
import { offsetRegion } from '../../../core/geometry/offset-region';
import { closeRegion, openRegion } from '../../../core/geometry/open-region';
import { indexOf } from '../../../core/geometry/segment-index';
import { int, squaredDistance, tableOfRegion } from '../../../core/geometry/segment-table';
import { windingAt } from '../../../core/geometry/winding';
import { movedRegion } from '../../../core/inspect/motion';
import { families, randomContour, seeded } from '../../../build/fuzz/random-contours';

// Against the slow way: at random places the least distance to every segment, one by one.
describe.each(Object.keys(families))('%s', (family) => {
  test('the profile is the distance to the nearest segment everywhere, and each piece only rises or falls', () => {
    const random = seeded(20_251);
    for (let round = 0; round < 12; round++) {
      const drawn = randomContour(family, random);
      const other = indexOf(tableOfRegion(openRegion([drawn], 0.15)));
      const turn = round % 2 === 0 ? 0 : 0.01 * (random() - 0.5);
      const punch = movedRegion(
        { dx: turn, dy: -turn, turn, about: { x: 0, y: 0 } },
        closeRegion(offsetRegion([drawn], -0.05), 0.15),
      );
      const table = tableOfRegion(punch);
      const profile = distanceProfile(table, other);
      for (const piece of profile) {
        const fraction = piece.from + (piece.to - piece.from) * random();
        const { x, y } = pointOn(table, piece.segment, fraction);
        let least = Infinity;
        for (let j = 0; j < other.table.count; j++)
          least = Math.min(least, squaredDistance(other.table, j, x, y));
        const distance = Math.sqrt(least) * (windingAt(other, x, y) > 0 ? 1 : -1);
        expect(Math.abs(distanceOn(table, piece, fraction) - distance)).toBeLessThan(1e-9);
        expect(distance).toBeGreaterThan(Math.min(piece.atFrom, piece.atTo) - 1e-9);
        expect(distance).toBeLessThan(Math.max(piece.atFrom, piece.atTo) + 1e-9);
      }
      if (other.table.count > 0) expect(isWhole(profile, table)).toBe(true);
    }
  });
});

/** Every segment is filled from 0 to 1 without a gap, and the distance does not jump. */
function isWhole(
  profile: ReturnType<typeof distanceProfile>,
  table: ReturnType<typeof tableOfRegion>,
): boolean {
  return profile.every((piece, k) => {
    const next = profile[k + 1];
    if (!next || piece.to === 1) {
      const follows = int(table.next, piece.segment);
      const first = profile.find(({ segment, from }) => segment === follows && from === 0);
      return piece.to === 1 && first !== undefined && Math.abs(first.atFrom - piece.atTo) < 1e-8;
    }
    return (
      next.segment === piece.segment && next.from === piece.to && Math.abs(next.atFrom - piece.atTo) < 1e-8
    );
  });
}
