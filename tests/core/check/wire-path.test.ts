import { describe, expect, it } from 'vitest';
import { readProgram } from '../../../core/check/read-program';
import { wirePath, type WirePath } from '../../../core/check/wire-path';

function pathOf(blocks: string, offsets: readonly (readonly [number, number])[] = [[1, 0.5]]): WirePath {
  const reading = readProgram(`%\nG71\nG17 G40 G90\n${blocks}\nM30\n`);
  if (!reading.ok) throw new Error(`${reading.problem.what} (${reading.problem.where})`);
  return wirePath(reading.value, new Map(offsets));
}

/** Ends of the moves, to nine decimals. */
const ends = ({ moves }: WirePath) =>
  moves.map(({ to }) => [Number(to.x.toFixed(9)) + 0, Number(to.y.toFixed(9)) + 0]);

const said = ({ faults }: WirePath) => faults.map(({ line, say }) => `${line}: ${say}`);

describe('wirePath', () => {
  it('goes as programmed while the offset is off', () => {
    expect(ends(pathOf('G0 X0 Y0\nG1 X1.5 Y-2 F3\nG3 X2.5 Y-1 I0 J1'))).toEqual([
      [0, 0],
      [1.5, -2],
      [2.5, -1],
    ]);
  });

  // All wanted numbers: exact geometry of parallels half a millimetre beside the contour.
  it('meets in corners that close: left of a square travelled counter-clockwise', () => {
    const path = pathOf('G0 X5 Y5\nG41 D1 G1 X5 Y0 F3\nX10.0000\nY10.0000\nX0\nY0\nX5\nG40 X5 Y5');
    expect(path.faults).toEqual([]);
    expect(ends(path)).toEqual([
      [5, 5],
      [5, 0.5],
      [9.5, 0.5],
      [9.5, 9.5],
      [0.5, 9.5],
      [0.5, 0.5],
      [5, 0.5],
      [5, 5],
    ]);
  });

  it('rolls about corners that open: right of the same square', () => {
    const path = pathOf('G0 X5 Y-5\nG42 D1 G1 X5 Y0 F3\nX10.0000\nY10.0000\nG40 X15');
    expect(path.faults).toEqual([]);
    expect(ends(path)).toEqual([
      [5, -5],
      [5, -0.5],
      [10, -0.5],
      [10.5, 0],
      [10.5, 10],
      [15, 10],
    ]);
    expect(path.moves[3]).toMatchObject({ centre: { x: 10, y: 0 }, line: 7 });
    expect(path.moves[3]?.turn).toBeCloseTo(Math.PI / 2, 12);
  });

  it('keeps arcs as arcs about the same centre, inside and outside', () => {
    const inside = pathOf('G0 X0 Y5\nG41 D1 G1 X0 Y0 F3\nX3.0000\nG3 X5 Y2 I0 J2\nG1 Y4\nG40 X0');
    expect(inside.faults).toEqual([]);
    expect(ends(inside).slice(2, 4)).toEqual([
      [3, 0.5],
      [4.5, 2],
    ]);
    const outside = pathOf('G0 X0 Y-5\nG42 D1 G1 X0 Y0 F3\nX3.0000\nG3 X5 Y2 I0 J2\nG1 Y4\nG40 X9');
    expect(ends(outside).slice(2, 4)).toEqual([
      [3, -0.5],
      [5.5, 2],
    ]);
  });

  it('meets an arc that closes on a line: from a 3-4-5 triangle', () => {
    // Circle of radius 5.5 about (0, 0) inside becomes 5; the line y = 3.5 beside becomes y = 3: they meet at (4, 3).
    const x = Math.sqrt(5.5 ** 2 - 3.5 ** 2).toFixed(9);
    const path = pathOf(`G0 X0 Y0\nG41 D1 G1 X5.5 Y0 F3\nG3 X${x} Y3.5 I-5.5 J0\nG1 X-5 Y3.5\nG40 X-5 Y0`);
    expect(path.faults).toEqual([]);
    const [, , arc] = path.moves;
    expect(arc?.to.x).toBeCloseTo(4, 8);
    expect(arc?.to.y).toBeCloseTo(3, 8);
    expect(arc?.turn).toBeCloseTo(Math.atan2(3, 4), 8);
  });

  it('uses the entry of the table that the program names, and changes it only while the offset is off', () => {
    const two = [
      [1, 0.5],
      [2, 0.25],
    ] as const;
    const path = pathOf('G0 X0 Y5\nG41 D1 G1 X0 Y0 F3\nX3\nG40 Y5\nG42 D2 X3 Y0\nX0\nG40 Y5', two);
    expect(path.faults).toEqual([]);
    expect(ends(path)[2]).toEqual([3, 0.5]);
    expect(ends(path)[5]).toEqual([0, 0.25]);
  });

  it.each([
    ['a lead shorter than the offset', 'G0 X0 Y0.4\nG41 D1 G1 X0 Y0 F3\nX3\nG40 Y5', 'comes on along', 5],
    ['a lead along an arc', 'G0 X0 Y2\nG41 D1 G3 X0 Y0 I0 J-1 F3\nG1 X3\nG40 Y5', 'comes on along', 5],
    ['a rapid lead', 'G0 X0 Y2\nG41 D1 X0 Y0\nG1 X3 F3\nG40 Y5', 'comes on along', 5],
    ['a short way out', 'G0 X0 Y2\nG41 D1 G1 X0 Y0 F3\nX3\nG40 Y0.3', 'goes off along', 7],
    ['the offset left on', 'G0 X0 Y2\nG41 D1 G1 X0 Y0 F3\nX3', 'ends with the offset on', 6],
    ['a side changed in between', 'G0 X0 Y2\nG41 D1 G1 X0 Y0 F3\nX3\nG42 X5\nG40 Y5', 'changes while', 7],
    ['an entry changed in between', 'G0 X0 Y2\nG41 D1 G1 X0 Y0 F3\nX3\nD2 X5\nG40 Y5', 'changes while', 7],
    ['an unknown entry', 'G0 X0 Y2\nG41 D7 G1 X0 Y0 F3\nX3\nG40 Y5', 'D7 is not in the table', 5],
    [
      'an inside arc as small as the offset',
      'G0 X0 Y5\nG41 D1 G1 X0 Y0 F3\nX3\nG3 X3.5 Y0.5 I0 J0.5\nG1 Y4\nG40 X0',
      'not larger than the offset',
      7,
    ],
    [
      'a step lower than the offset can follow',
      'G0 X0 Y5\nG41 D1 G1 X0 Y0 F3\nX3\nY0.2\nX2.8\nG1 Y4\nG40 X0',
      'more of a move than there is',
      8,
    ],
  ])('names what a control would refuse or spoil: %s', (_, blocks, words, line) => {
    const faults = said(pathOf(blocks));
    expect(
      faults.some((fault) => fault.startsWith(`${line}: `) && fault.includes(words)),
      faults.join('\n'),
    ).toBe(true);
  });
});
