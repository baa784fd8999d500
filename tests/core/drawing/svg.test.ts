import { describe, expect, it } from 'vitest';
import { outlineOf, readDrawing } from '../../../core/drawing/read-drawing';
import { svgTransform } from '../../../core/drawing/svg-transform';
import { contourArea, contourLength } from '../../../core/geometry/contour-measures';
import { moved, vector } from '../../../core/drawing/transform';
import { bytes, codesOf, problemOf, valueOf } from './drawn';

const svg = (inside: string, head = 'width="200mm" height="100mm" viewBox="0 0 200 100"'): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg" ${head}>${inside}</svg>\n`;
const read = (text: string) => valueOf(readDrawing(new TextEncoder().encode(text)));
const outline = (text: string) => {
  const raw = read(text);
  return valueOf(outlineOf(raw, raw.statedUnit ?? 'mm', 0.005));
};
const areas = (inside: string): number[] =>
  outline(svg(inside)).contours.map(({ contour }) => contourArea(contour));
const near = (value: number) => expect.closeTo(value, 9) as number;

// Areas by plane geometry from the definitions in SVG 1.1, chapters 8 and 9.

describe('basic shapes', () => {
  it.each([
    ['rect', '<rect x="1" y="2" width="30" height="20"/>', 600],
    ['rect with round corners', '<rect width="30" height="20" rx="4"/>', 600 - (4 - Math.PI) * 16],
    ['rect whose radius is too large', '<rect width="30" height="20" rx="99" ry="99"/>', null],
    ['circle', '<circle cx="50" cy="50" r="7"/>', 49 * Math.PI],
    ['polygon', '<polygon points="0,0 30 0 30,40"/>', 600],
    ['lines', '<line x1="0" y1="0" x2="30" y2="0"/><polyline points="30,0 30,40 0,0"/>', 600],
    ['path', '<path d="M0 0H30V40Z"/>', 600],
    ['path with relative and bare numbers', '<path d="m10-5 30,0 0 40-30-40z"/>', 600],
    ['half disc', '<path d="M0 0A5 5 0 0 1 10 0z"/>', 12.5 * Math.PI],
    ['three quarters of a disc', '<path d="M5 0A5 5 0 1 1 0-5L0 0z"/>', 18.75 * Math.PI],
    ['arc flags without blanks', '<path d="M0 0a5 5 0 0110 0z"/>', 12.5 * Math.PI],
    ['radii that are too small grow', '<path d="M0 0A1 1 0 0 1 10 0z"/>', 12.5 * Math.PI],
  ])('%s', (_, inside, area) => {
    if (area === null) {
      // An ellipse of half-diameters 15 and 10.
      expect(Math.abs((areas(inside)[0] ?? 0) - 150 * Math.PI)).toBeLessThan(80 * 0.0005);
    } else expect(areas(inside)).toEqual([near(area)]);
  });

  it('circles and round corners stay arcs', () => {
    const { contours, largestFitError } = outline(svg('<rect width="30" height="20" rx="4"/>'));
    expect(contours[0]?.contour).toHaveLength(8);
    expect(largestFitError).toBe(0);
  });

  it.each([
    // Area between a cubic and its chord (0,0)-(6,0), control points (0,4), (6,4): 3/20 (…) = 14.4.
    ['C', '<path d="M0 0C0 4 6 4 6 0z"/>', 14.4],
    ['c and s: twice the same side', '<path d="M0 0c0 4 6 4 6 0s6-4 6 0l0 -9 -12 0z"/>', null],
    ['Q: a parabola holds 2/3', '<path d="M0 0Q3 6 6 0z"/>', 12],
    ['T mirrors: the halves cancel', '<path d="M0 0Q3 6 6 0T12 0V-9H0z"/>', 108],
    ['ellipse', '<ellipse cx="40" cy="40" rx="15" ry="6"/>', 90 * Math.PI],
  ])('curves: %s', (_, inside, area) => {
    const drawing = outline(svg(inside));
    const contour = drawing.contours[0]?.contour ?? [];
    const slack = contourLength(contour) * drawing.largestFitError + 1e-9;
    // S mirrors the last control point (6,4) to (6,-4); with end control (12,-4) the second half bulges down: 108 again.
    expect(Math.abs(contourArea(contour) - (area ?? 108))).toBeLessThan(slack);
    expect(codesOf(drawing)).toContain('note curve-fitted');
  });
});

describe('place and size', () => {
  it('y points up', () => {
    expect(outline(svg('<polygon points="0,0 30,0 30,40"/>')).box).toEqual({
      minX: 0,
      maxX: 30,
      minY: -40,
      maxY: 0,
    });
  });

  it.each([
    ['mm by the view box', 'width="100mm" height="50mm" viewBox="0 0 1000 500"', 'mm', 3],
    ['inch', 'width="2in" height="1in" viewBox="0 0 2 1"', 'mm', 30 * 25.4],
    ['pt without a view box: CSS pixels', 'width="72pt"', 'mm', (30 * 25.4) / 96],
    ['the smaller scale where they differ', 'width="100mm" height="10mm" viewBox="0 0 100 100"', 'mm', 3],
    ['px says nothing', 'width="100px" height="50px" viewBox="0 0 100 50"', null, 30],
    ['nothing stated', '', null, 30],
    ['percent', 'width="100%" viewBox="0 0 9 9"', null, 30],
  ])('%s', (_, head, unit, width) => {
    const raw = read(svg('<rect width="30" height="20"/>', head));
    expect(raw.format).toBe('svg');
    expect(raw.statedUnit).toBe(unit);
    expect(raw.box.maxX - raw.box.minX).toEqual(near(width));
  });

  it('transforms, nested, in their order (SVG 1.1, 7.6)', () => {
    const point = (text: string): number[] => {
      const by = svgTransform(text);
      if (!by) throw new Error(text);
      const { x, y } = moved(by, vector(1, 2, 0));
      return [x, y];
    };
    expect(point('translate(10,20) scale(2)')).toEqual([12, 24]);
    expect(point('scale(2 3),translate(10)')).toEqual([22, 6]);
    expect(point('rotate(90)')).toEqual([-2, 1]);
    expect(point('rotate(90 1 2)')).toEqual([1, 2]);
    expect(point('matrix(1 2 3 4 5 6)')).toEqual([12, 16]);
    expect(point('skewX(45)')[0]).toBeCloseTo(3, 12);
    for (const bad of ['scale()', 'rotate(1 2)', 'turn(3)', 'scale(1', 'matrix(1 2 3 4 5 nan)'])
      expect(svgTransform(bad)).toBeNull();
    const nested = '<g transform="translate(10 0)"><g transform="scale(2 1)"><circle r="5"/></g></g>';
    const drawing = outline(svg(nested));
    expect(drawing.box.minX).toBeCloseTo(0, 2);
    expect(Math.abs(contourArea(drawing.contours[0]?.contour ?? []) - 50 * Math.PI)).toBeLessThan(0.03);
    // Mirrored and turned, a circle stays round.
    expect(outline(svg('<circle r="5" transform="rotate(30) scale(-2)"/>')).largestFitError).toBe(0);
  });
});

describe('what is drawn and what is not', () => {
  it('hidden, dashed, in defs, text and pictures are no outline; all that is seen is counted', () => {
    const drawing = outline(
      svg(
        `<!-- <rect width="9" height="9"/> --><defs><circle r="3"/></defs><symbol><circle r="2"/></symbol>
         <g style="display:none"><rect width="5" height="5"/></g><g visibility="hidden"><rect width="4" height="4"/></g>
         <circle r="1" stroke-dasharray="2 1"/><text x="1" y="2">&lt;b&gt;</text><image href="x.png"/><use href="#a"/>
         <g inkscape:label="Cut &amp; fold"><circle r="40" style="stroke:#f00;fill:none"/></g>`,
      ),
    );
    expect(drawing.contours.map(({ layer }) => layer)).toEqual(['Cut & fold']);
    expect(drawing.unused.map(({ kind, reason }) => `${kind}: ${reason}`)).toEqual([
      ...['circle: dashed: not an edge', 'image: kind that is not read', 'rect: invisible', 'text: text'],
      'use: kind that is not read',
    ]);
  });

  it('chosen by colour', () => {
    const raw = read(
      svg('<circle r="40" stroke="#ff0000"/><circle r="5" stroke="rgb(0,0,255)"/><circle r="3" fill="red"/>'),
    );
    const choice = { layers: null, colours: [0xff0000], contours: {} };
    expect(valueOf(outlineOf(raw, 'mm', 0.005, { choice })).contours).toHaveLength(2);
  });

  it('path data with an error is drawn up to there, and a person is asked', () => {
    const drawing = outline(svg('<path d="M0 0H30V40Z M50 50 L bad"/>'));
    expect(drawing.contours).toHaveLength(1);
    expect(codesOf(drawing)).toContain('decide drawing-mended');
  });
});

describe('bad SVG', () => {
  it.each([
    ['cut off', svg('<circle r="5"/>').slice(0, -10), 'drawing-cut-off'],
    ['cut off in a tag', svg('<circle r="5"/>').slice(0, 150), 'drawing-cut-off'],
    ['cut off in a comment', '<svg><!-- ', 'drawing-cut-off'],
    ['far off', svg('<circle r="5" transform="translate(1e300)"/>'), 'drawing-bad-number'],
    ['HTML', '<html><body></body></html>', 'drawing-not-dxf'],
  ])('%s', (_, text, code) => {
    const problem = problemOf(readDrawing(bytes(text)));
    expect(problem.code).toBe(code);
    expect(problem.whatToDo).not.toBe('');
  });
});
