import { describe, expect, it } from 'vitest';
import { families, randomContour, seeded } from '../../../build/fuzz/random-contours';
import type { Box, Point } from '../../../core/geometry/contour';
import { bruteDistance } from '../../support/contour-facts';
import { cutOf, cutsOf, plainWishes } from '../../support/planned-cut';
import { circle, roundedRectangle, square } from '../../support/shapes';

const rough = 0.165;
const block: Box = { minX: -12, minY: -12, maxX: 32, maxY: 32 };

const holeOf = (planned: ReturnType<typeof cutOf>) => {
  const [start] = planned.cut.starts;
  if (!start) throw new Error('no start hole');
  return start;
};

describe('start holes by the rule', () => {
  it('lie in the waste, square off the middle of a long side, with the wanted lead-in', () => {
    const die = holeOf(cutOf([square(20)], 'die'));
    expect(bruteDistance([square(20)], die.x, die.y)).toBeCloseTo(3 + rough, 9);
    expect(die).toMatchObject({ diameter: 1, kind: 'drilled' });
    const punch = holeOf(cutOf([square(20)], 'punch'));
    expect(bruteDistance([square(20)], punch.x, punch.y)).toBeCloseTo(3 + rough, 9);
    expect(punch.x < 0 || punch.x > 20 || punch.y < 0 || punch.y > 20).toBe(true);
  });

  it('keep the stated clearance from hole to path, exactly where there is no more room', () => {
    // A circle of 2.4: path radius 1.035. A hole of 1 mm with 0.3 clear needs its centre 0.8 inside of it.
    const planned = cutOf([circle(1.2)], 'die', { wishes: { length: 0.1 } });
    const hole = holeOf(planned);
    expect(hole.diameter).toBe(1);
    expect(1.2 - rough - Math.hypot(hole.x, hole.y)).toBeCloseTo(0.8, 9);
  });

  it('are never nearer than that, whatever the contour', () => {
    let holes = 0;
    for (const family of Object.keys(families)) {
      for (let seed = 1; seed <= 15; seed++) {
        const designed = [randomContour(family, seeded(seed * 613))];
        for (const role of ['die', 'punch'] as const) {
          for (const { cut } of cutsOf(designed, role, { wishes: { holeDiameter: 2 } })) {
            const [start] = cut.starts;
            if (!start) continue;
            holes++;
            const toPath = bruteDistance([cut.passes[0]?.loop ?? []], start.x, start.y);
            expect(toPath - start.diameter / 2).toBeGreaterThan(plainWishes.holeClearance - 1e-5);
          }
        }
      }
    }
    expect(holes).toBeGreaterThan(200);
  });

  it('leave the frame of the block standing', () => {
    for (const frame of [0, 2, 5]) {
      const hole = holeOf(cutOf([square(20)], 'punch', { site: { block, frame } }));
      const room = Math.min(
        hole.x - block.minX,
        block.maxX - hole.x,
        hole.y - block.minY,
        block.maxY - hole.y,
      );
      expect(room - hole.diameter / 2).toBeGreaterThan(frame - 1e-5);
    }
    // 12 mm of steel beside the punch cannot take a frame of 11.5 and a hole of 1 with its clearance.
    const none = cutOf([square(20)], 'punch', { site: { block, frame: 11.5 } });
    expect(none.cut.starts).toEqual([null]);
  });

  it('stay out of clamp zones and away from other members', () => {
    const clamps = [{ minX: -12, minY: -12, maxX: 32, maxY: -0.5 }];
    const others = [square(20, -25, 0), square(20, 25, 0)];
    const hole = holeOf(cutOf([square(20)], 'punch', { site: { block, clamps, others } }));
    expect(hole.y).toBeGreaterThan(20);
  });

  it('shrink where they must, and are none where none fits', () => {
    expect(holeOf(cutOf([circle(0.9)], 'die')).diameter).toBe(0.8);
    expect(cutOf([circle(0.3)], 'die').cut.starts).toEqual([null]);
  });
});

describe('start holes of the drawing', () => {
  const drawnHoles = [
    { x: 10, y: 8, diameter: 3 },
    { x: 40, y: 8, diameter: 3 },
  ];

  it('are threaded through where they lie in the waste', () => {
    const hole = holeOf(cutOf([square(20)], 'die', { site: { drawnHoles } }));
    expect(hole).toEqual({ x: 10, y: 8, diameter: 3, kind: 'drawn' });
    const off = holeOf(cutOf([square(20)], 'die', { site: { drawnHoles }, wishes: { drawnHoles: false } }));
    expect(off.kind).toBe('drilled');
  });

  it('are left alone where they are too near the path, or too small for the wire', () => {
    for (const hole of [
      { x: 1.9, y: 8, diameter: 3 },
      { x: 10, y: 8, diameter: 0.2 },
    ]) {
      expect(holeOf(cutOf([square(20)], 'die', { site: { drawnHoles: [hole] } })).kind).toBe('drilled');
    }
  });

  it('are recognized when a person puts the start hole there', () => {
    const site = { drawnHoles: [{ x: 3, y: 3, diameter: 2 }] };
    const choice = { stretches: [{ hole: { x: 3, y: 3 } }] };
    const planned = cutOf([square(20)], 'die', { site, choice, wishes: { drawnHoles: false } });
    expect(holeOf(planned)).toEqual({ x: 3, y: 3, diameter: 2, kind: 'drawn' });
  });
});

describe('a start hole that a person chose', () => {
  const chosen = (hole: Point, more: Parameters<typeof cutOf>[2] = {}, role: 'die' | 'punch' = 'punch') =>
    cutOf([square(20)], role, { ...more, choice: { stretches: [{ hole }] } });

  it('is taken with its diameter', () => {
    const planned = cutOf([square(20)], 'die', {
      choice: { stretches: [{ hole: { x: 7, y: 9 }, holeDiameter: 2.5 }] },
    });
    expect(holeOf(planned)).toEqual({ x: 7, y: 9, diameter: 2.5, kind: 'drilled' });
    expect(planned.layout.troubles).toEqual([]);
  });

  it.each([
    ['in the member', { x: 5, y: 5 }, {}, 'in the member itself'],
    ['too near the path', { x: -0.9, y: 5 }, {}, 'too near the path'],
    ['outside the block', { x: -13, y: 5 }, { site: { block } }, 'outside the block'],
    ['in the frame', { x: -9, y: 5 }, { site: { block, frame: 5 } }, 'too near the edge of the block'],
    [
      'in a clamp zone',
      { x: -5, y: 5 },
      { site: { clamps: [{ minX: -8, minY: 0, maxX: -5.4, maxY: 9 }] } },
      'clamp',
    ],
    ['in another member', { x: -5, y: 5 }, { site: { others: [square(4, -8, 4)] } }, 'another member'],
  ])('%s is not allowed, with the reason, and the rule places one', (_, hole, more, because) => {
    const planned = chosen(hole, more);
    expect(planned.layout.troubles[0]?.because).toContain(because);
    expect(planned.layout.troubles[0]?.at).toEqual(hole);
    expect(holeOf(planned)).not.toMatchObject(hole);
  });

  it('outside of an opening is in the steel that stays', () => {
    expect(chosen({ x: -5, y: 5 }, {}, 'die').layout.troubles[0]?.because).toContain(
      'in the steel that stays',
    );
  });

  it('may touch the stated clearance', () => {
    // Path at 0.165 outside, clearance 0.3, radius 0.5.
    expect(chosen({ x: -0.965, y: 5 }).layout.troubles).toEqual([]);
    expect(chosen({ x: -0.964, y: 5 }).layout.troubles).toHaveLength(1);
  });
});

describe('a start from the edge of the block', () => {
  it('begins outside, straight to the nearest side, without a hole', () => {
    const planned = cutOf([roundedRectangle(20, 10, 1)], 'punch', {
      site: { block: { minX: -4, minY: -12, maxX: 32, maxY: 22 }, frame: 5 },
      choice: { fromEdge: true },
    });
    const start = holeOf(planned);
    expect(start.kind).toBe('edge');
    expect(start.diameter).toBe(0);
    expect(start.x).toBeCloseTo(-4 - 2, 9);
    expect(planned.layout.troubles).toEqual([]);
  });

  it('is refused for a die, whose frame it would cut through', () => {
    const planned = cutOf([square(20)], 'die', { site: { block }, choice: { fromEdge: true } });
    expect(holeOf(planned).kind).toBe('drilled');
    expect(planned.layout.troubles[0]).toMatchObject({ kind: 'edge' });
  });
});
