import { describe, expect, it } from 'vitest';
import type { Chain, Vertex } from '../../../core/geometry/contour';
import { arcOf } from '../../../core/geometry/contour-measures';
import type { CutRun, PassPath } from '../../../core/plan';
import { cutOf, type CutChanges } from '../../support/planned-cut';
import { circle, polygon, roundedRectangle, square } from '../../support/shapes';

const rough = 0.165;

const first = (pass: PassPath | undefined): CutRun => {
  const run = pass?.main[0];
  if (!run) throw new Error('no run');
  return run;
};

const roughRun = (changes: CutChanges, role: 'die' | 'punch' = 'die') =>
  first(cutOf([square(20)], role, changes).cut.passes[0]);

/** Direction of a chain at its end and at its start, radians. */
const headingAtEnd = (chain: Chain): number => {
  const [a, b] = chain.slice(-2) as [Vertex, Vertex];
  return Math.atan2(b.y - a.y, b.x - a.x) + 2 * Math.atan(a.bulge);
};
const headingAtStart = ([a, b]: Chain): number =>
  Math.atan2((b?.y ?? 0) - (a?.y ?? 0), (b?.x ?? 0) - (a?.x ?? 0)) - 2 * Math.atan(a?.bulge ?? 0);
const turn = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(b - a), Math.cos(b - a)));

const distance = (a: Vertex | undefined, b: Vertex | undefined): number =>
  Math.hypot((a?.x ?? NaN) - (b?.x ?? NaN), (a?.y ?? NaN) - (b?.y ?? NaN));

describe('lead-in and lead-out', () => {
  it('square: one straight from the hole, at a right angle', () => {
    const { leadIn, cut } = roughRun({});
    expect(leadIn).toHaveLength(2);
    expect(distance(leadIn[0], leadIn[1])).toBeCloseTo(3, 9);
    expect(turn(headingAtEnd(leadIn), headingAtStart(cut))).toBeCloseTo(Math.PI / 2, 9);
  });

  it('square from a hole that lies aside: over where the wire waits, square from there', () => {
    const { leadIn, cut } = roughRun({ choice: { stretches: [{ hole: { x: 4, y: 4 } }] } });
    expect(leadIn).toHaveLength(3);
    expect(distance(leadIn[1], leadIn[2])).toBeCloseTo(1, 9);
    expect(turn(headingAtEnd(leadIn), headingAtStart(cut))).toBeCloseTo(Math.PI / 2, 9);
  });

  it('straight: from a hole that lies aside in one line', () => {
    const { leadIn } = roughRun({
      wishes: { shape: 'straight' },
      choice: { stretches: [{ hole: { x: 4, y: 4 } }] },
    });
    expect(leadIn).toHaveLength(2);
    expect(leadIn[0]).toEqual({ x: 4, y: 4, bulge: 0 });
  });

  it('tangent arc: runs into the contour without a bend, a quarter turn of the wanted radius', () => {
    for (const role of ['die', 'punch'] as const) {
      for (const direction of ['counter-clockwise', 'clockwise'] as const) {
        const planned = cutOf([square(20)], role, {
          wishes: { shape: 'tangent arc', arcRadius: 0.4, direction },
        });
        for (const { leadIn, cut, leadOut } of planned.cut.passes.map(first)) {
          const [foot, at] = leadIn.slice(-2) as [Vertex, Vertex];
          expect(Math.abs(foot.bulge)).toBeCloseTo(Math.tan(Math.PI / 8), 12);
          expect(arcOf(foot, at).radius).toBeCloseTo(0.4, 9);
          expect(turn(headingAtEnd(leadIn), headingAtStart(cut))).toBeLessThan(1e-7);
          expect(turn(headingAtEnd(cut), headingAtStart(leadOut))).toBeLessThan(1e-7);
        }
      }
    }
  });

  it('tangent arcs leave at least half of the tab standing as its neck', () => {
    const planned = cutOf([square(20)], 'die', { wishes: { shape: 'tangent arc', arcRadius: 5 } });
    const [{ begin, end } = { begin: null, end: null }] = planned.layout.stretches;
    expect(begin?.arcRadius).toBeCloseTo(0.5, 9);
    expect(end?.arcRadius).toBeCloseTo(0.5, 9);
  });

  it('an arc that has no room becomes a straight', () => {
    // A slot of 0.7: the wire's path is 0.37 wide, a quarter turn and a straight of the offset need more.
    const slot = polygon([0, 0], [10, 0], [10, 0.7], [0, 0.7]);
    const planned = cutOf([slot], 'die', {
      wishes: { shape: 'tangent arc', tabLength: 0, holeDiameter: 0.3, holeClearance: 0 },
    });
    expect(planned.layout.stretches[0]?.begin.arcRadius).toBe(0);
  });

  it('the control switches its offset on and off along a straight longer than the offset', () => {
    for (const shape of ['perpendicular', 'straight', 'tangent arc'] as const) {
      for (const slug of ['kept', 'dropped'] as const) {
        for (const contour of [square(20), roundedRectangle(20, 10, 2), circle(4)]) {
          for (const role of ['die', 'punch'] as const) {
            const { cut } = cutOf([contour], role, { wishes: { shape, slug, overlap: 0.3 } });
            for (const pass of cut.passes) {
              const runs = [...(pass.contour?.main ?? []), ...(pass.contour?.tabs ?? [])];
              expect(runs.length).toBeGreaterThan(0);
              for (const { leadIn, leadOut } of runs) {
                for (const lead of [leadIn, [...leadOut].reverse()]) {
                  const isArc = lead.length > 2 && lead.slice(1, -1).some((_, k) => arcBetween(lead, k + 1));
                  const [from, to] = lead.slice(isArc ? -3 : -2);
                  expect(distance(from, to)).toBeGreaterThan(pass.offset);
                }
              }
            }
          }
        }
      }
    }
  });

  it('on the contour the arc is larger by the offset about the same middle', () => {
    const { cut } = cutOf([square(20)], 'die', { wishes: { shape: 'tangent arc', arcRadius: 0.4 } });
    for (const pass of cut.passes) {
      const programmed = pass.contour?.main[0]?.leadIn.slice(-2) as [Vertex, Vertex];
      const own = first(pass).leadIn.slice(-2) as [Vertex, Vertex];
      const [wide, narrow] = [arcOf(...programmed), arcOf(...own)];
      expect(wide.radius).toBeCloseTo(0.4 + pass.offset, 9);
      expect(wide.cx).toBeCloseTo(narrow.cx, 9);
      expect(wide.cy).toBeCloseTo(narrow.cy, 9);
    }
  });
});

describe('overlap', () => {
  it('a pass all round goes so far over its begin', () => {
    const { cut } = cutOf([square(20)], 'die', { wishes: { slug: 'dropped', overlap: 0.5 } });
    const skim = first(cut.passes[1]);
    const [begin, end] = [skim.cut[0], skim.cut.at(-1)];
    expect(distance(begin, end)).toBeCloseTo(0.5, 9);
    // The tab's run reaches so far over both its ends: 2 mm of tab and twice the overlap.
    const tab = cut.passes[0]?.tabs[0]?.cut;
    expect(distance(tab?.[0], tab?.at(-1))).toBeCloseTo(3, 9);
  });

  it('none without one', () => {
    const { cut } = cutOf([square(20)], 'die', { wishes: { overlap: 0 } });
    expect(distance(cut.passes[0]?.tabs[0]?.cut[0], cut.passes[0]?.tabs[0]?.cut.at(-1))).toBeCloseTo(2, 9);
  });
});

describe('where the lead-in lies', () => {
  it('is moved along the contour by hand, to the nearest point of it', () => {
    const planned = cutOf([square(20)], 'die', {
      wishes: { tabLength: 0 },
      choice: { stretches: [{ place: { x: 21, y: 6 } }] },
    });
    const at = planned.layout.stretches[0]?.begin.at;
    expect(at?.x).toBeCloseTo(20 - rough, 9);
    expect(at?.y).toBeCloseTo(6, 9);
  });

  it('is the middle of the longest straight, away from corners', () => {
    const planned = cutOf([roundedRectangle(30, 10, 2)], 'die', { wishes: { tabLength: 0 } });
    const at = planned.layout.stretches[0]?.begin.at;
    expect(at?.x).toBeCloseTo(15, 9);
  });
});

/** An arc of a chain shows in its direction: the middle vertex is off the line of its neighbours. */
const arcBetween = (chain: Chain, at: number): boolean =>
  (chain[at]?.bulge ?? 0) !== 0 || (chain[at - 1]?.bulge ?? 0) !== 0;
