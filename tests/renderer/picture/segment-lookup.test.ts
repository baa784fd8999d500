import { describe, expect, it } from 'vitest';
import { segmentLookup, segmentsOf } from '../../../renderer/picture/segment-lookup';
import { roundedSlot, square } from '../../support/shapes';

describe('segmentLookup', () => {
  const segments = [
    ...segmentsOf(square(4), { name: 'box' }),
    ...segmentsOf(roundedSlot(6, 1), { name: 'slot' }),
  ];
  const lookup = segmentLookup(segments);

  it('finds the nearest segment on lines and arcs, within a reach', () => {
    expect(lookup.nearest({ x: 7.1, y: 0 }, 0.2)).toMatchObject({
      segment: { name: 'slot' },
      place: { distance: expect.closeTo(0.1, 12) as number },
    });
    expect(lookup.nearest({ x: 2, y: 4.1 }, 0.2)?.segment.name).toBe('box');
    expect(lookup.nearest({ x: 2, y: 4.3 }, 0.2)).toBeNull();
  });

  it('takes the first of two as near, and gives segments in a box in their order', () => {
    const twice = segmentLookup([
      ...segmentsOf(square(2), { name: 'a' }),
      ...segmentsOf(square(2), { name: 'b' }),
    ]);
    expect(twice.nearest({ x: 1, y: 2.05 }, 0.1)?.segment.name).toBe('a');
    const found = twice.segmentsIn({ minX: 0.5, minY: 1.9, maxX: 0.6, maxY: 2.1 });
    expect(found.map(({ name }) => name)).toEqual(['a', 'b']);
  });

  it('nothing is found among nothing', () => {
    expect(segmentLookup([]).nearest({ x: 0, y: 0 }, 1)).toBeNull();
    expect(segmentLookup([]).segmentsIn({ minX: 0, minY: 0, maxX: 1, maxY: 1 })).toEqual([]);
  });
});
