import { describe, expect, it } from 'vitest';
import type { Drawing, RepairSwitch } from '../../../core/drawing/drawing';
import { outlineOf } from '../../../core/drawing/read-drawing';
import { contourArea } from '../../../core/geometry/contour-measures';
import { tolerance } from '../../../core/geometry/tolerance';
import type { Result } from '../../../core/problem';
import {
  arc,
  circle,
  codesOf,
  drawn,
  dxf,
  line,
  polyline,
  raw,
  square,
  valueOf,
  xy,
  type Groups,
} from './drawn';

const without = (entities: Groups, ...repairsOff: RepairSwitch[]): Result<Drawing> =>
  outlineOf(raw(dxf({ entities })), 'mm', tolerance.gap, { repairsOff });
const areas = ({ contours }: Drawing): number[] => contours.map(({ contour }) => contourArea(contour));
const kinds = ({ repairs }: Drawing): string[] => repairs.map(({ kind }) => kind);
const sides = (text: string): Groups => {
  const corners = xy(text);
  return corners.flatMap(([x = 0, y = 0], i) => {
    const [nextX = 0, nextY = 0] = corners[(i + 1) % corners.length] ?? [];
    return line(x, y, nextX, nextY);
  });
};

describe('pieces that partly overlap are merged', () => {
  const open = [...line(10, 0, 10, 10), ...line(10, 10, 0, 10), ...line(0, 10, 0, 0)];
  const edge = [...line(0, 0, 6, 0), ...line(10, 0, 4, 0)];

  it('lines: one contour without a corner where they met, the overlap with its place and length', () => {
    const drawing = drawn([...open, ...edge]);
    expect(areas(drawing)).toEqual([expect.closeTo(100, 12)]);
    expect(drawing.contours[0]?.contour).toHaveLength(4);
    expect(drawing.repairs).toContainEqual({
      kind: 'overlap',
      place: { x: 5, y: 0 },
      size: expect.closeTo(2, 12),
    });
    expect(codesOf(drawing)).toEqual(['note outline-repaired']);
  });

  it('switched off, nothing closes', () => {
    const read = without([...open, ...edge], 'overlap');
    expect(read.ok ? 'ok' : read.problem.code).toBe('no-closed-contour');
  });

  it('arcs: two that share a quarter of a circle', () => {
    const arcs = [...arc(0, 0, 5, 0, 120), ...arc(0, 0, 5, 60, 180), ...line(-5, 0, 5, 0)];
    const drawing = drawn(arcs);
    expect(areas(drawing)).toEqual([expect.closeTo(12.5 * Math.PI, 10)]);
    expect(drawing.repairs.filter(({ kind }) => kind === 'overlap')).toEqual([
      { kind: 'overlap', place: expect.anything(), size: expect.closeTo((5 * Math.PI) / 3, 9) },
    ]);
  });

  it('a chain of three, one of them wholly over the others', () => {
    const drawing = drawn([...open, ...line(0, 0, 6, 0), ...line(5, 0, 10, 0), ...line(2, 0, 8, 0)]);
    expect(areas(drawing)).toEqual([expect.closeTo(100, 12)]);
    expect(drawing.contours[0]?.contour).toHaveLength(4);
    expect(codesOf(drawing).filter((code) => code.startsWith('decide'))).toEqual([]);
  });
});

describe('T-joints', () => {
  it('an edge that runs past its corner is cut there; the overshoot beyond the gap is told', () => {
    const drawing = drawn([
      ...line(0, 0, 10.4, 0),
      ...line(10, 0, 10, 10),
      ...line(10, 10, 0, 10),
      ...line(0, 10, 0, 0),
    ]);
    expect(areas(drawing)).toEqual([expect.closeTo(100, 12)]);
    expect(drawing.repairs).toEqual([{ kind: 'T-joint', place: { x: 10, y: 0 }, size: 0 }]);
    expect(codesOf(drawing)).toEqual(['decide contour-open', 'note outline-repaired']);
  });

  it('an overshoot within the gap is put right and no more', () => {
    // The ends are 0.02 apart and 0.02 past the corner: both are beyond the gap of 0.01, the end on the edge is not.
    const past = [
      ...line(-0.004, 0, 10.02, 0),
      ...line(10, 0.003, 10, 10),
      ...line(10, 10, 0, 10),
      ...line(0, 10, 0, 0),
    ];
    const drawing = valueOf(outlineOf(raw(dxf({ entities: past })), 'mm', 0.05));
    expect(Math.abs((areas(drawing)[0] ?? 0) - 100)).toBeLessThan(0.2);
    expect(codesOf(drawing).filter((code) => code.startsWith('decide'))).toEqual([]);
  });

  it('a rounded corner drawn over its sharp one: what closes stays, and a person is asked about the arc', () => {
    const sharp = [
      ...line(0, 0, 10, 0),
      ...line(10, 0, 10, 10),
      ...line(10, 10, 0, 10),
      ...line(0, 10, 0, 0),
    ];
    const drawing = drawn([...sharp, ...arc(7, 3, 3, 270, 360)]);
    expect(areas(drawing)).toEqual([expect.closeTo(100, 12)]);
    expect(codesOf(drawing)).toContain('decide contour-open');
  });

  it('switched off, the outline stays open', () => {
    const entities = [
      ...line(0, 0, 10.4, 0),
      ...line(10, 0, 10, 10),
      ...line(10, 10, 0, 10),
      ...line(0, 10, 0, 0),
    ];
    const read = without(entities, 'T-joint');
    expect(read.ok ? 'ok' : read.problem.code).toBe('no-closed-contour');
  });
});

describe('two outlines that share an edge', () => {
  const shared = [...sides('0,0 10,0 10,8 0,8'), ...sides('10,0 25,0 25,8 10,8')];

  it('drawn for each of them as lines: both are contours, the edge belongs to both, a person is asked', () => {
    const drawing = drawn(shared);
    expect(areas(drawing).sort((a, b) => a - b)).toEqual([expect.closeTo(80, 12), expect.closeTo(120, 12)]);
    expect(drawing.repairs).toContainEqual({ kind: 'shared edge', place: { x: 10, y: 4 }, size: 8 });
    expect(codesOf(drawing)).toContain('decide contours-touch');
    expect(codesOf(drawing).filter((code) => code.startsWith('stop'))).toEqual([]);
  });

  it('drawn as closed polylines: the same two', () => {
    const drawing = drawn([...square(0, 0, 8), ...square(8, 2, 8)]);
    expect(areas(drawing)).toEqual([64, 64]);
    expect(codesOf(drawing)).toEqual(['decide contours-touch']);
  });

  it('in a row of three, and with an arc between them', () => {
    const third = sides('25,0 40,0 40,8 25,8');
    expect(areas(drawn([...shared, ...third])).sort((a, b) => a - b)).toEqual([
      expect.closeTo(80, 12),
      expect.closeTo(120, 12),
      expect.closeTo(120, 12),
    ]);
    const between = arc(0, 0, 5, 270, 90);
    const left = [...between, ...line(0, 5, -9, 5), ...line(-9, 5, -9, -5), ...line(-9, -5, 0, -5)];
    const right = [...between, ...line(0, 5, 9, 5), ...line(9, 5, 9, -5), ...line(9, -5, 0, -5)];
    const [small, large] = areas(drawn([...left, ...right])).sort((a, b) => a - b);
    expect(small).toBeCloseTo(90 - 12.5 * Math.PI, 10);
    expect(large).toBeCloseTo(90 + 12.5 * Math.PI, 10);
  });

  it('drawn once it divides an outline, and gives way', () => {
    const drawing = drawn([...sides('0,0 10,0 25,0 25,8 10,8 0,8'), ...line(10, 0, 10, 8)]);
    expect(areas(drawing)).toEqual([expect.closeTo(200, 12)]);
    expect(kinds(drawing)).toEqual([]);
  });

  it('switched off, the edge gives way too', () => {
    expect(areas(valueOf(without(shared, 'shared edge')))).toEqual([expect.closeTo(200, 12)]);
  });
});

describe('an outline that touches itself', () => {
  const inside = polyline(true, xy('0,0 10,0 10,10 5,10 6,6 4,6 5,10 0,10'));

  it('from inside: the outline and the hole that hangs on it', () => {
    const drawing = drawn(inside);
    expect(drawing.contours.map(({ contour, depth }) => [contourArea(contour), depth])).toEqual([
      [expect.closeTo(100, 9), 0],
      [expect.closeTo(4, 9), 1],
    ]);
    expect(drawing.repairs).toEqual([{ kind: 'self-touch', place: { x: 5, y: 10 }, size: 0 }]);
    expect(codesOf(drawing)).toEqual(['decide contours-touch', 'note outline-repaired']);
  });

  it('from outside: two that share a point; on the middle of an edge: the same', () => {
    expect(areas(drawn(polyline(true, xy('0,0 4,0 4,4 8,4 8,8 4,8 4,4 0,4'))))).toEqual([16, 16]);
    const onEdge = drawn(polyline(true, xy('0,0 10,0 10,10 6,10 5,0 4,10 0,10')));
    expect(areas(onEdge)).toEqual([expect.closeTo(45, 9), expect.closeTo(45, 9)]);
  });

  it('a spike that leads out and back goes', () => {
    const drawing = drawn(polyline(true, xy('0,0 10,0 10,5 14,5 10,5 10,10 0,10')));
    expect(areas(drawing)).toEqual([expect.closeTo(100, 9)]);
    expect(drawing.repairs).toEqual([
      { kind: 'overlap', place: expect.anything(), size: expect.closeTo(8, 9) },
    ]);
  });

  it('where it crosses itself it is stopped, as ever', () => {
    expect(codesOf(drawn(polyline(true, xy('0,0 10,10 10,0 0,10'))))).toEqual(['stop contours-cross']);
    // A loop of its own inside: run round twice.
    expect(codesOf(drawn(polyline(true, xy('0,0 10,0 10,10 0,10 0,2 6,2 6,6 2,6 2,0'))))[0]).toBe(
      'stop contours-cross',
    );
  });

  it.each([
    ['as a polyline', polyline(true, xy('0,0 10,10 10,0 0,10'))],
    ['as lines', sides('0,0 10,10 10,0 0,10')],
    ['large and far away', sides('9000,9000 10000,10000 10000,9000 9000,10000')],
    ['beside another outline', [...sides('0,0 10,10 10,0 0,10'), ...square(20, 0, 5)]],
  ] as const)('a bow tie holds no area on balance and crosses itself all the same: %s', (_, entities) => {
    expect(codesOf(drawn(entities))).toContain('stop contours-cross');
  });

  it('switched off, it is stopped', () => {
    expect(codesOf(valueOf(without(inside, 'self-touch')))).toEqual(['stop contours-cross']);
  });
});

describe('tiny steps', () => {
  const step = polyline(true, xy('0,0 5,0 5,0.0008 10,0.0008 10,10 0,10'));

  it('between far longer edges are taken out', () => {
    const drawing = drawn(step);
    expect(drawing.contours[0]?.contour).toHaveLength(5);
    expect(drawing.repairs).toEqual([
      { kind: 'tiny step', place: { x: 5, y: 0.0004 }, size: expect.closeTo(0.0008, 12) },
    ]);
    expect(codesOf(drawing)).toEqual(['note outline-repaired']);
  });

  it('switched off they stay; short pieces in a row draw a curve and stay', () => {
    expect(valueOf(without(step, 'tiny step')).contours[0]?.contour).toHaveLength(6);
    const fine = Array.from({ length: 40 }, (_, i) => {
      const turn = (i * Math.PI) / 20;
      return [0.005 * Math.cos(turn), 0.005 * Math.sin(turn)];
    });
    const drawing = drawn([...polyline(true, fine), ...square(-5, -5, 10)]);
    expect(drawing.contours[1]?.contour).toHaveLength(40);
  });
});

describe('every repair is listed with place and size', () => {
  it('gaps, duplicates, pieces without length', () => {
    const entities = [
      ...[...line(0, 0, 10, 0), ...line(10, 0.003, 10, 10), ...line(10, 10, 0, 10), ...line(0, 10, 0, 0)],
      ...[...line(0, 10, 10, 10), ...circle(5, 5, 2), ...circle(5, 5, 2), ...line(3, 3, 3, 3)],
    ];
    const { repairs } = drawn(entities);
    expect(repairs).toEqual([
      { kind: 'duplicate', place: expect.anything(), size: expect.closeTo(4 * Math.PI, 9) },
      { kind: 'duplicate', place: { x: 5, y: 10 }, size: 10 },
      { kind: 'gap', place: { x: 10, y: 0.0015 }, size: expect.closeTo(0.003, 12) },
      { kind: 'zero length', place: { x: 3, y: 3 }, size: 0 },
    ]);
  });

  it('gaps switched off: nothing is joined that does not meet', () => {
    const entities = [
      ...line(0, 0, 10, 0),
      ...line(10, 0.003, 10, 10),
      ...line(10, 10, 0, 10),
      ...line(0, 10, 0, 0),
    ];
    const read = without(entities, 'gap');
    expect(read.ok ? 'ok' : read.problem.code).toBe('no-closed-contour');
  });

  it('duplicates switched off: both stay', () => {
    expect(valueOf(without([...circle(0, 0, 5), ...circle(0, 0, 5)], 'duplicate')).contours).toHaveLength(2);
  });
});
