import { describe, expect, it } from 'vitest';
import { chainLength } from '../../../core/geometry/contour-measures';
import { chainTail } from '../../../core/geometry/chain-tail';
import { earlyRun } from '../../../core/wire/early-run';

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

describe('earlyRun', () => {
  const run = [
    { x: 0, y: 0, bulge: 0 },
    { x: 9, y: 0, bulge: 0 },
  ];
  const before = [
    { x: -5, y: 0, bulge: 0 },
    { x: 0, y: 0, bulge: 0 },
  ];
  /** The wire is above the runs of these tests, which go right, and left of them. */
  const from = (x: number, y: number, offset = 0.2) => ({ waste: { x, y }, side: 'left', offset }) as const;

  // LinuxCNC's interpreter starts offset · tan(turn / 2) late (measured): the check against it stands in
  // tests/reference/output.
  it('begins earlier by what the wire starts late', () => {
    // Square: offset · tan 45°.
    expect(earlyRun(run, before, from(0, 4000))?.[0]?.x).toBeCloseTo(-0.202, 4);
    // A short lead-in tilts as the start moves back, and asks for more.
    const near = earlyRun(run, before, from(0, 1))?.[0]?.x ?? NaN;
    const late = 0.2 * Math.tan((Math.PI / 2 + Math.atan(-near)) / 2);
    expect(-near).toBeGreaterThan(late);
    expect(-near).toBeLessThan(1.02 * late);
  });

  it('hardly begins earlier where the lead-in comes from behind', () => {
    expect(earlyRun(run, before, from(-4000, 1))?.[0]?.x).toBeCloseTo(0, 3);
  });

  const circle = (angle: number, bulge = 0) => ({ x: 5 * Math.cos(angle), y: 5 * Math.sin(angle), bulge });
  const bend = (angle: number) => Math.tan(angle / 4);

  it('is one segment over the place where the runs meet, a line as well as an arc', () => {
    expect(earlyRun(run, before, from(0, 4))).toHaveLength(2);
    const [arc, ahead] = [
      [circle(-1, bend(1)), circle(0)],
      [circle(0, bend(1)), circle(1)],
    ];
    const inside = earlyRun(ahead, arc, from(1, 0));
    expect(inside).toHaveLength(2);
    expect(inside?.[0]?.bulge).toBeGreaterThan(bend(1));
    expect(Math.hypot(inside?.[0]?.x ?? NaN, inside?.[0]?.y ?? NaN)).toBeCloseTo(5, 12);
  });

  it('begins early enough on either side of an arc', () => {
    const arc = [circle(-1, bend(1)), circle(0)];
    const ahead = [circle(0, bend(1)), circle(1)];
    const angle = (waste: number, side: 'left' | 'right') => {
      const [first] = earlyRun(ahead, arc, { waste: { x: waste, y: 0 }, side, offset: 1 }) ?? [];
      return -Math.atan2(first?.y ?? NaN, first?.x ?? NaN);
    };
    // A level lead-in to the angle -φ puts the wire's centre one offset above: at 0 or before while 5 sin φ ≥ offset.
    for (const found of [angle(-4000, 'left'), angle(4000, 'right')]) {
      expect(found).toBeGreaterThan(Math.asin(1 / 5));
      expect(found).toBeLessThan(1.6 * Math.asin(1 / 5));
    }
  });

  it('begins farther back where a corner just behind the run would leave the first piece too short', () => {
    const corner = [
      { x: -0.1, y: 5, bulge: 0 },
      { x: -0.1, y: 0, bulge: 0 },
      { x: 0, y: 0, bulge: 0 },
    ];
    const [first, second] = earlyRun(run, corner, from(1, 4)) ?? [];
    // Down to the corner, where the wire turns off one offset above it.
    expect(first?.x).toBeCloseTo(-0.1, 12);
    expect(first?.y).toBeGreaterThan(0.2);
    expect(second).toEqual({ x: -0.1, y: 0, bulge: 0 });
  });

  it('is nothing where there is no room', () => {
    // A lead-in from the front, a contour that is too short, two that do not lead to the run, an arc too tight.
    expect(earlyRun(run, before, from(4, 0.1))).toBeNull();
    expect(earlyRun(run, before, from(0, 4, 6))).toBeNull();
    expect(earlyRun(run, run, from(0, 4))).toBeNull();
    expect(earlyRun(run, [], from(0, 4))).toBeNull();
    expect(
      earlyRun([circle(0, bend(1)), circle(1)], [circle(-1, bend(1)), circle(0)], from(1, 0, 5)),
    ).toBeNull();
  });
});
