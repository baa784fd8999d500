import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contourArea } from '../../../core/geometry/contour-measures';
import { arc, circle, codesOf, drawn, line, polyline, square, xy, type Groups } from './drawn';

const sides = (text: string): Groups[] => {
  const corners = xy(text);
  return corners.map(([x = 0, y = 0], i) => {
    const [nextX = 0, nextY = 0] = corners[(i + 1) % corners.length] ?? [];
    return line(x, y, nextX, nextY);
  });
};

describe('segments in any order and direction', () => {
  // A slot with a notch: lines, both kinds of arc and a half turn.
  const pieces: Groups[] = [
    line(0, 0, 20, 0),
    arc(20, 5, 5, 270, 90),
    line(20, 10, 12, 10),
    arc(10, 10, 2, 180, 360),
    line(8, 10, 0, 10),
    arc(0, 5, 5, 90, 270),
  ];
  const turned = (piece: Groups): Groups => {
    const [, kind, , layer, , x0, , y0, , x1, , y1] = piece;
    return kind === 'LINE'
      ? [0, 'LINE', 8, layer ?? '', 10, x1 ?? 0, 20, y1 ?? 0, 11, x0 ?? 0, 21, y0 ?? 0]
      : piece;
  };
  const expected = drawn(pieces.flat()).contours;

  it('hold what the slot holds: 200 + 25π − 2π', () => {
    expect(expected.map(({ contour }) => contourArea(contour))).toEqual([
      expect.closeTo(200 + 23 * Math.PI, 10),
    ]);
  });

  it('shuffled and turned they give the very same contour', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...pieces.keys()], { minLength: pieces.length }),
        fc.array(fc.boolean(), { minLength: pieces.length, maxLength: pieces.length }),
        (order, turns) => {
          const entities = order.flatMap((i) => (turns[i] ? turned(pieces[i] ?? []) : (pieces[i] ?? [])));
          expect(drawn(entities).contours).toEqual(expected);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('random star-shaped outlines, drawn as shuffled lines with gaps, close again', () => {
    const distance = fc.double({ min: 5, max: 20, noNaN: true });
    const slip = fc.double({ min: -0.001, max: 0.001, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(distance, slip, slip), { minLength: 3, maxLength: 24 }),
        fc.integer({ min: 1, max: 1000 }),
        (spokes, seed) => {
          const at = spokes.map(([r], i) => {
            const turn = (2 * Math.PI * i) / spokes.length;
            return [r * Math.cos(turn), r * Math.sin(turn)] as const;
          });
          const lines = at.map(([x, y], i) => {
            const [nextX, nextY] = at[(i + 1) % at.length] ?? [0, 0];
            const [, dx, dy] = spokes[i] ?? [0, 0, 0];
            return i % 2 === 0 ? line(x + dx, y + dy, nextX, nextY) : line(nextX, nextY, x + dx, y + dy);
          });
          const shuffled = lines.map((piece, i) => ({ piece, key: (i * 7919 * seed) % 1009 }));
          shuffled.sort((a, b) => a.key - b.key);
          const drawing = drawn(shuffled.flatMap(({ piece }) => piece));
          expect(drawing.contours).toHaveLength(1);
          expect(drawing.contours[0]?.contour).toHaveLength(at.length);
          const exact = at.reduce((sum, [x, y], i) => {
            const [nextX, nextY] = at[(i + 1) % at.length] ?? [0, 0];
            return sum + (x * nextY - y * nextX) / 2;
          }, 0);
          // Each corner moves by at most half a gap of √2 µm, over two edges of at most 40 mm.
          expect(Math.abs(contourArea(drawing.contours[0]?.contour ?? []) - exact)).toBeLessThan(
            0.001 * 20 * at.length,
          );
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('gaps', () => {
  const withGap = (gap: number): Groups => [
    ...line(0, 0, 10, 0),
    ...line(10, gap, 10, 10),
    ...line(10, 10, 0, 10),
    ...line(0, 10, 0, 0),
  ];

  it('within the tolerance are closed in the middle and told, with their size and place', () => {
    const drawing = drawn(withGap(0.004));
    expect(drawing.contours[0]?.largestGap).toBeCloseTo(0.004, 12);
    expect(drawing.contours[0]?.contour).toContainEqual({ x: 10, y: 0.002, bulge: 0 });
    const [finding] = drawing.findings;
    expect(finding).toMatchObject({
      code: 'gap-closed',
      weight: 'note',
      contourId: 'c1',
      place: { x: 10, y: 0.002 },
    });
    expect(finding?.numbers).toContainEqual({
      label: 'Largest gap',
      value: expect.closeTo(0.004, 12),
      kind: 'length',
    });
  });

  it('beyond it stay open; a larger tolerance closes them', () => {
    const open = drawn([...square(20, 0, 5), ...withGap(0.02)]);
    expect(open.contours).toHaveLength(1);
    const finding = open.findings.find(({ code }) => code === 'contour-open');
    expect(finding).toMatchObject({ weight: 'decide', place: { x: 10 } });
    expect(finding?.message).toMatch(/4 pieces on layer 0 does not close.*0\.02 mm/);
    expect(open.unused).toEqual([{ layer: '0', kind: 'LINE', reason: 'open chain', count: 4 }]);
    expect(drawn(withGap(0.02), 0.05).contours).toHaveLength(1);
  });

  it('a piece shorter than the tolerance keeps its place between its neighbours', () => {
    const chamfer = xy('0,0 9.997,0 10,0.003 10,10 0,10')
      .map(([x = 0, y = 0]) => `${x},${y}`)
      .join(' ');
    const drawing = drawn(sides(chamfer).flat());
    expect(drawing.contours[0]?.contour).toHaveLength(5);
    expect(drawing.findings).toEqual([]);
  });

  it('the same where it does not quite meet them: the nearest ends belong together', () => {
    const chamfer = line(9.997, 0.0005, 10, 0.0025);
    const rest = [
      ...line(0, 0, 9.997, 0),
      ...line(10, 0.003, 10, 10),
      ...line(10, 10, 0, 10),
      ...line(0, 10, 0, 0),
    ];
    const drawing = drawn([...chamfer, ...rest]);
    expect(drawing.contours[0]?.contour).toHaveLength(5);
    expect(drawing.contours[0]?.largestGap).toBeCloseTo(0.0005, 12);
  });

  it('an open polyline whose ends meet is closed', () => {
    expect(drawn(polyline(false, xy('0,0 10,0 10,10 0,10 0,0'))).contours[0]?.contour).toHaveLength(4);
  });
});

describe('where more than two ends meet', () => {
  it('a stub with a dead end is left out, even if it runs on more smoothly than the outline', () => {
    const drawing = drawn([...sides('0,0 10,0 10,10 0,10').flat(), ...line(10, 0, 15, 0)]);
    expect(contourArea(drawing.contours[0]?.contour ?? [])).toBeCloseTo(100, 12);
    expect(drawing.unused).toEqual([{ layer: '0', kind: 'LINE', reason: 'branch off a contour', count: 1 }]);
    expect(codesOf(drawing)).toEqual(['decide contour-open', 'note drawing-not-used']);
    expect(drawing.findings[0]?.place).toMatchObject({ x: 15, y: 0 });
  });

  it('a stub that ends in the middle of an edge', () => {
    const drawing = drawn([...sides('0,0 10,0 10,10 0,10').flat(), ...line(5, 0, 5, -5)]);
    expect(contourArea(drawing.contours[0]?.contour ?? [])).toBeCloseTo(100, 12);
    expect(drawing.unused[0]?.reason).toBe('branch off a contour');
  });

  it('a dividing line between two corners of a chain gives way to the smooth outline', () => {
    const outline = sides('0,0 5,0 10,0 10,10 5,10 0,10').flat();
    const drawing = drawn([...outline, ...line(5, 0, 5, 10)]);
    expect(drawing.contours.map(({ contour }) => contourArea(contour))).toEqual([expect.closeTo(100, 12)]);
    expect(drawing.unused).toEqual([{ layer: '0', kind: 'LINE', reason: 'branch off a contour', count: 1 }]);
  });

  it('two squares that share a corner stay two, and a person is asked', () => {
    const drawing = drawn([
      ...sides('0,0 10,0 10,10 0,10').flat(),
      ...sides('10,10 20,10 20,20 10,20').flat(),
    ]);
    expect(drawing.contours.map(({ contour }) => contourArea(contour))).toEqual([100, 100]);
    expect(codesOf(drawing)).toEqual(['decide contours-touch']);
  });

  it('two rings joined by a bridge: the bridge is left out', () => {
    const rings = [...sides('0,0 10,0 10,10 0,10').flat(), ...sides('20,0 30,0 30,10 20,10').flat()];
    const drawing = drawn([...rings, ...line(10, 0, 20, 0)]);
    expect(drawing.contours).toHaveLength(2);
    expect(drawing.unused).toEqual([{ layer: '0', kind: 'LINE', reason: 'branch off a contour', count: 1 }]);
  });

  it('many open runs on a layer are summed up in one finding', () => {
    const strokes = Array.from({ length: 40 }, (_, i) => line(i, 20, i, 21, 'MARKS')).flat();
    const drawing = drawn([...square(0, 0, 10), ...strokes]);
    const open = drawing.findings.filter(({ code }) => code === 'contour-open');
    expect(open.map(({ message }) => message)).toEqual([
      expect.stringMatching(/^40 open runs of 40 pieces on layer MARKS/),
    ]);
  });
});

describe('duplicates', () => {
  it('of lines and arcs, same or reversed, of circles and of whole contours', () => {
    const slot = [
      ...line(0, 0, 10, 0),
      ...arc(10, 2, 2, 270, 90),
      ...line(10, 4, 0, 4),
      ...arc(0, 2, 2, 90, 270),
    ];
    const again = [
      ...line(0, 0, 10, 0),
      ...line(10, 0, 0, 0),
      ...arc(10, 2, 2, 270, 90),
      210,
      0,
      220,
      0,
      230,
      1,
    ];
    const rings = [...circle(5, 2, 1), ...circle(5, 2, 1), ...polyline(true, xy('6,2,-1 4,2,-1'))];
    const drawing = drawn([...slot, ...again, ...rings]);
    expect(drawing.contours.map(({ contour }) => contourArea(contour))).toEqual([
      expect.closeTo(40 + 4 * Math.PI, 10),
      expect.closeTo(Math.PI, 10),
    ]);
    expect(drawing.unused.map(({ kind, reason, count }) => `${count} ${kind} ${reason}`)).toEqual([
      '1 ARC duplicate',
      '1 CIRCLE duplicate',
      '2 LINE duplicate',
      '1 LWPOLYLINE duplicate',
    ]);
  });

  it('of a spline drawn twice in opposite directions', () => {
    const spline = (points: Groups): Groups => [
      ...[0, 'SPLINE', 8, '0', 71, 3],
      ...[0, 0, 0, 0, 1, 1, 1, 1].flatMap((knot) => [40, knot]),
      ...points,
    ];
    const forward = spline([10, 0, 20, 0, 10, 0, 20, 4, 10, 6, 20, 9, 10, 6, 20, 0]);
    const backward = spline([10, 6, 20, 0, 10, 6, 20, 9, 10, 0, 20, 4, 10, 0, 20, 0]);
    const drawing = drawn([...forward, ...backward, ...line(0, 0, 6, 0)]);
    expect(drawing.contours).toHaveLength(1);
    expect(drawing.unused).toEqual([{ layer: '0', kind: 'SPLINE', reason: 'duplicate', count: 1 }]);
  });

  it('pieces drawn over a part of an edge', () => {
    const drawing = drawn([...square(0, 0, 10), ...line(2, 0, 6, 0), ...line(0, 10, 10, 10)]);
    expect(drawing.contours).toHaveLength(1);
    expect(drawing.unused).toEqual([{ layer: '0', kind: 'LINE', reason: 'duplicate', count: 2 }]);
    expect(codesOf(drawing)).toEqual(['note drawing-not-used']);
  });

  it('a line there and back holds no area', () => {
    const drawing = drawn([...square(0, 0, 10), ...polyline(true, xy('20,0 25,0'))]);
    expect(drawing.unused[0]?.reason).toBe('closed, but holds no area');
  });
});
