import { describe, expect, it } from 'vitest';
import type { Contour } from '../../../core/geometry/contour';
import { addChain, addContour, type PathSink } from '../../../renderer/picture/contour-to-path';
import { contourToSvg, segmentToSvg } from '../../../renderer/picture/segment-to-svg';

/** Bulge of a quarter turn, tan(90° / 4): DXF reference, LWPOLYLINE group 42. */
const quarter = Math.tan(Math.PI / 8);
const origin = { x: 0, y: 0 };

function recorder() {
  const steps: (string | number | boolean)[][] = [];
  const round = (value: number) => Math.round(value * 1e9) / 1e9 || 0;
  const path: PathSink = {
    moveTo: (x, y) => steps.push(['move', round(x), round(y)]),
    lineTo: (x, y) => steps.push(['line', round(x), round(y)]),
    arc: (x, y, r, start, end, backwards) =>
      steps.push(['arc', round(x), round(y), round(r), round(start), round(end), backwards]),
    closePath: () => steps.push(['close']),
  };
  return { path, steps };
}

const slot: Contour = [
  { x: 0, y: 0, bulge: 0 },
  { x: 10, y: 0, bulge: 1 },
  { x: 10, y: 4, bulge: 0 },
  { x: 0, y: 4, bulge: 1 },
];

describe('addContour', () => {
  it('keeps lines lines and arcs arcs', () => {
    const { path, steps } = recorder();
    addContour(path, slot, origin);
    const half = Math.round((Math.PI / 2) * 1e9) / 1e9;
    expect(steps).toEqual([
      ['move', 0, 0],
      ['line', 10, 0],
      ['arc', 10, 2, 2, -half, half, false],
      ['line', 0, 4],
      ['arc', 0, 2, 2, half, -half, false],
      ['close'],
    ]);
  });

  it('runs clockwise arcs backwards', () => {
    const { path, steps } = recorder();
    addChain(
      path,
      [
        { x: 1, y: 0, bulge: -quarter },
        { x: 0, y: -1, bulge: 0 },
      ],
      origin,
    );
    // Quarter circle of radius 1 about the origin, from 0 down to −90°.
    const half = Math.round((Math.PI / 2) * 1e9) / 1e9;
    expect(steps).toEqual([
      ['move', 1, 0],
      ['arc', 0, 0, 1, 0, -half, true],
    ]);
  });

  it('measures from the origin given', () => {
    const { path, steps } = recorder();
    addContour(path, slot, { x: 100, y: -50 });
    expect(steps[0]).toEqual(['move', -100, 50]);
    expect(steps[2]?.slice(0, 4)).toEqual(['arc', -90, 52, 2]);
  });

  it('draws nothing of what is no contour', () => {
    const { path, steps } = recorder();
    addContour(path, [], origin);
    addChain(path, [{ x: 1, y: 1, bulge: 0 }], origin);
    expect(steps).toEqual([]);
  });
});

describe('SVG path data', () => {
  // SVG 2, 9.3.8: A rx ry rotation large-arc sweep x y; sweep 1 turns from x to y, which is ours with y up.
  it('writes arcs as arcs with their sense', () => {
    expect(contourToSvg(slot)).toBe('M0 0L10 0A2 2 0 0 1 10 4L0 4A2 2 0 0 1 0 0Z');
    expect(segmentToSvg({ x: 1, y: 0, bulge: -quarter }, { x: 0, y: -1, bulge: 0 })).toBe(
      'M1 0A1 1 0 0 0 0 -1',
    );
    expect(contourToSvg([])).toBe('');
  });
});
