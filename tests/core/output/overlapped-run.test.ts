import { describe, expect, it } from 'vitest';
import { chainLength } from '../../../core/geometry/contour-measures';
import { chainTail } from '../../../core/output/chain-tail';
import { overlappedRun } from '../../../core/output/overlapped-run';

const quarter = Math.tan(Math.PI / 8);

describe('chainTail', () => {
  it('cuts a line where it must', () => {
    const chain = [
      { x: 0, y: 0, bulge: 0 },
      { x: 10, y: 0, bulge: 0 },
      { x: 10, y: 5, bulge: 0 },
    ];
    expect(chainTail(chain, 2)).toEqual([
      { x: 10, y: 3, bulge: 0 },
      { x: 10, y: 5, bulge: 0 },
    ]);
    expect(chainTail(chain, 6)[0]).toEqual({ x: 9, y: 0, bulge: 0 });
    expect(chainTail(chain, 99)).toEqual(chain);
    expect(chainTail(chain, 0)).toEqual(chain.slice(-1));
  });

  it('cuts an arc as an arc of the same circle', () => {
    // Quarter turn about the origin, radius 2, from 0° to 90°; its last third begins at 60°. Bulge = tan(angle / 4).
    for (const way of [1, -1]) {
      const chain = [
        { x: 2, y: 0, bulge: way * quarter },
        { x: 0, y: way * 2, bulge: 0 },
      ];
      const tail = chainTail(chain, Math.PI / 3);
      expect(tail).toHaveLength(2);
      expect(tail[0]?.x).toBeCloseTo(2 * Math.cos(Math.PI / 3), 12);
      expect(tail[0]?.y).toBeCloseTo(way * 2 * Math.sin(Math.PI / 3), 12);
      expect(tail[0]?.bulge).toBeCloseTo(way * Math.tan(Math.PI / 24), 12);
      expect(chainLength(tail)).toBeCloseTo(Math.PI / 3, 12);
    }
  });
});

describe('overlappedRun', () => {
  const run = [
    { x: 0, y: 0, bulge: 0 },
    { x: 9, y: 0, bulge: 0 },
  ];
  const before = [
    { x: -5, y: 0, bulge: 0 },
    { x: 0, y: 0, bulge: 0 },
  ];

  it('begins an offset and a tenth earlier where the lead-in comes in square', () => {
    expect(overlappedRun(run, before, { x: 0, y: 4 }, 0.2)[0]?.x).toBeCloseTo(-0.22, 12);
  });

  it('hardly begins earlier where the lead-in runs along, and never more than two offsets', () => {
    expect(overlappedRun(run, before, { x: -4, y: 0 }, 0.2)[0]?.x).toBeCloseTo(0, 12);
    expect(overlappedRun(run, before, { x: 4, y: 0.1 }, 0.2)[0]?.x).toBeCloseTo(-0.4, 12);
  });

  it('measures the turn at the tangent of an arc', () => {
    // The arc starts upward, so a lead-in from the right meets it square.
    const arc = [
      { x: 0, y: 0, bulge: quarter },
      { x: -1, y: 1, bulge: 0 },
    ];
    const below = [
      { x: 0, y: -5, bulge: 0 },
      { x: 0, y: 0, bulge: 0 },
    ];
    expect(overlappedRun(arc, below, { x: 4, y: 0 }, 0.2)[0]?.y).toBeCloseTo(-0.22, 12);
  });

  it('leaves a run alone that nothing on the contour leads to', () => {
    expect(overlappedRun(run, [], { x: 0, y: 4 }, 0.2)).toEqual(run);
    expect(overlappedRun(run, run, { x: 0, y: 4 }, 0.2)).toEqual(run);
  });
});
