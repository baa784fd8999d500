import { describe, expect, it } from 'vitest';
import { readProgram } from '../../../core/check/read-program';
import { plainDialect, type ProgramDialect } from '../../../core/check/program-dialect';
import type { ProgramReading } from '../../../core/check/program-reading';

function read(text: string, dialect: Partial<ProgramDialect> = {}): ProgramReading {
  const result = readProgram(text, { ...plainDialect, ...dialect });
  if (!result.ok) throw new Error(`${result.problem.what} (${result.problem.where})`);
  return result.value;
}

function problemOf(text: string): string {
  const result = readProgram(text);
  if (result.ok) throw new Error('nothing wrong was found');
  return `${result.problem.code} ${result.problem.where}`;
}

const upright = { u: 0, v: 0 };

describe('readProgram', () => {
  it('reads the worked arc of NIST IR 6556 (RS274/NGC, 2000): centre (10, 11), radius 5', () => {
    const [, arc] = read('G21 G90 G0 X7 Y7\nG17 G2 X10 Y16 I3 J4 F100\nM2').moves;
    expect(arc?.centre).toEqual({ x: 10, y: 11 });
    expect(Math.hypot(7 - 10, 7 - 11)).toBe(5);
    expect(arc?.kind).toBe('arc');
    // Clockwise from 233.13° to 90°: arithmetic of the two angles about the centre.
    expect(arc?.turn).toBeCloseTo(-(Math.PI + Math.atan2(4, 3) - Math.PI / 2), 12);
  });

  it('reads the same arc by its radius, the long and the short way', () => {
    const [, short] = read('G21 G90 G0 X7 Y7\nG2 X10 Y16 R5 F100\nM2').moves;
    expect(short?.centre?.x).toBeCloseTo(10, 12);
    expect(short?.centre?.y).toBeCloseTo(11, 12);
    expect(short?.turn).toBeCloseTo(-(Math.PI / 2 + Math.atan2(4, 3)), 12);
    const [, long] = read('G21 G90 G0 X7 Y7\nG2 X10 Y16 R-5 F100\nM2').moves;
    expect(Math.abs(long?.turn ?? 0)).toBeCloseTo(2 * Math.PI - Math.abs(short?.turn ?? 0), 12);
  });

  it('keeps words that hold: motion, feed, coordinates, side and register', () => {
    const { moves } = read(
      '%\nN1 G71 G90\nN2 G17 G40 G90\nN3 G00 X0.0 Y0.0\nN4 G41 D2 G01 X1.0 F4.5\nY1.0\nN6 G03 X0.0 Y2.0 I-1.0\nN7 G40 G01 X0.5\nN8 M30\n%\nX9',
    );
    expect(moves.map(({ line, kind, side, register, feed }) => [line, kind, side, register, feed])).toEqual([
      [4, 'rapid', 'off', null, null],
      [5, 'line', 'left', 2, 4.5],
      [6, 'line', 'left', 2, 4.5],
      [7, 'arc', 'left', 2, 4.5],
      [8, 'line', 'off', null, 4.5],
    ]);
    expect(moves.map(({ to }) => to)).toEqual([
      { x: 0, y: 0, ...upright },
      { x: 1, y: 0, ...upright },
      { x: 1, y: 1, ...upright },
      { x: 0, y: 2, ...upright },
      { x: 0.5, y: 2, ...upright },
    ]);
  });

  it('reads inches as mm, by the word of the standard and of the dialect', () => {
    for (const word of ['G70', 'G20']) {
      const { unit, moves, step } = read(`${word} G90\nG0 X1.00000 Y0.5\nG1 X2.00000 F0.10000\nM2`);
      expect(unit).toBe('inch');
      // 1 in = 25.4 mm exactly (international inch).
      expect(moves[1]?.to).toEqual({ x: 50.8, y: 12.7, ...upright });
      expect(moves[1]?.feed).toBeCloseTo(2.54, 12);
      expect(step).toBeCloseTo(25.4e-5, 15);
    }
  });

  it('reads distances from where the wire is, and places named anew by G92', () => {
    const { moves } = read('G71 G90\nG92 X10 Y5\nG91 G1 X1 Y1 F3\nX1\nG92 X0 Y0\nG90 X1\nM2');
    expect(moves.map(({ to }) => [to.x, to.y])).toEqual([
      [11, 6],
      [12, 6],
      [13, 6],
    ]);
  });

  it('reads the secondary axes: the wire leans from where U and V say so', () => {
    const { moves } = read('G71 G90\nG0 X0 Y0\nG1 X1 U0.1 V-0.2 F3\nX2\nU0 V0\nM2');
    expect(moves.map(({ to }) => [to.x, to.u, to.v])).toEqual([
      [0, 0, 0],
      [1, 0.1, -0.2],
      [2, 0.1, -0.2],
      [2, 0, 0],
    ]);
  });

  it('takes a full turn where an arc ends where it starts', () => {
    const [, circle] = read('G71 G90\nG0 X1 Y0\nG3 X1 Y0 I-1 J0 F2\nM2').moves;
    expect(circle?.turn).toBe(2 * Math.PI);
  });

  it('lists stops and words of the machine with what their comments say', () => {
    const { pauses, stated } = read(
      '(D1 = 0.1650 MM = 0.00650 IN - ROUGH)\nG71 G90\nG0 X0 Y0\nM00 (THREAD THE WIRE)\nG1 X1 F2\nM01\nM60\nM30',
    );
    expect(
      pauses.map(({ line, kind, word, said, afterMoves, afterRapid }) => [
        line,
        kind,
        word,
        said,
        afterMoves,
        afterRapid,
      ]),
    ).toEqual([
      [4, 'stop', 'M00', 'THREAD THE WIRE', 1, true],
      [6, 'may stop', 'M01', '', 2, false],
      [7, 'machine', 'M60', '', 2, false],
    ]);
    expect([...stated]).toEqual([[1, 0.165]]);
  });

  it("passes over a shop's own words, and only where they stand for themselves", () => {
    expect(read('G71 G90\nG0 X0 Y0\nG500 K7\nM2', { ownWords: ['G500 K7'] }).moves).toHaveLength(1);
    expect(readProgram('G71 G90\nG0 X0 Y0\nG5001\nM2', { ...plainDialect, ownWords: ['G500'] }).ok).toBe(
      false,
    );
  });

  it('counts last decimals where a style implies the point, and takes entries of the offset table by its letter', () => {
    const impliedDecimals = { mm: 4, inch: 5, feedMm: 1, feedInch: 3 };
    const { moves, step, feedStep, stated } = read(
      '(H01 = 0.1650 MM)\nG71 G90\nG0 X15000 Y-5\nG41 H01 G1 X2.5 F42\nG40 X0\nM2',
      { impliedDecimals, offsetLetter: 'H' },
    );
    expect(moves.map(({ to, feed, register }) => [to.x, to.y, feed, register])).toEqual([
      [1.5, -0.0005, null, null],
      [2.5, -0.0005, 4.2, 1],
      [0, -0.0005, 4.2, null],
    ]);
    expect([step, feedStep]).toEqual([0.0001, 0.1]);
    expect(stated.get(1)).toBe(0.165);
  });

  it('reads lower case, blanks within words, semicolons and every kind of line end', () => {
    const text = 'g71 g90 ; metric\r\ng 0 x 1. y .5\r\ng1 x+2 f3\rm2';
    expect(read(text).moves.map(({ line, to }) => [line, to.x, to.y])).toEqual([
      [2, 1, 0.5],
      [3, 2, 0.5],
    ]);
  });

  it.each([
    ['a parameter', 'G71 G90\nG0 X#1 Y0\nM2', 'program-word line 2'],
    ['a formula', 'G71 G90\nG0 X[1+1] Y0\nM2', 'program-word line 2'],
    ['a block to skip', 'G71 G90\n/G0 X0 Y0\nM2', 'program-word line 2'],
    ['a bracket left open', 'G71 G90\n(NO END\nM2', 'program-word line 2'],
    ['two points in a number', 'G71 G90\nG0 X1.2.3 Y0\nM2', 'program-word line 2'],
    ['another plane', 'G71 G90\nG18\nM2', 'program-g-word line 2'],
    ['a drilling cycle', 'G71 G90\nG81 X0 Y0\nM2', 'program-g-word line 2'],
    ['two motions in a block', 'G71 G90\nG0 G1 X0 Y0\nM2', 'program-contradicts line 2'],
    ['a word twice', 'G71 G90\nG0 X0 X1 Y0\nM2', 'program-twice line 2'],
    ['a letter without meaning here', 'G71 G90\nG0 X0 Y0 Z1\nM2', 'program-letter line 2'],
    ['a length before the unit', 'G0 X0 Y0\nG71\nM2', 'program-no-unit line 1'],
    ['distances from nobody knows where', 'G71\nG0 X0 Y0\nM2', 'program-distances line 2'],
    ['a second unit', 'G71 G90\nG70\nM2', 'program-unit-changes line 2'],
    ['a second zero', 'G71 G90\nG54\nG55\nM2', 'program-zero-changes line 3'],
    ['an unknown start', 'G71 G90\nG0 X0\nM2', 'program-place line 2'],
    ['a move without its kind', 'G71 G90\nX0 Y0\nM2', 'program-motion line 2'],
    ['an arc from nowhere', 'G71 G90\nG2 X1 Y0 I1 J0\nM2', 'program-arc line 2'],
    ['an arc without its centre', 'G71 G90\nG0 X0 Y0\nG2 X1 Y0 F1\nM2', 'program-arc line 3'],
    ['an arc too small for its ends', 'G71 G90\nG0 X0 Y0\nG2 X1 Y0 R0.4 F1\nM2', 'program-arc line 3'],
    ['a straight move with a centre', 'G71 G90\nG0 X0 Y0\nG1 X1 Y0 I1 F1\nM2', 'program-arc-words line 3'],
    ['moves after the end', 'G71 G90\nG0 X0 Y0\nM2\nG0 X1', 'program-goes-on line 4'],
    ['no end', 'G71 G90\nG0 X0 Y0', 'program-no-end '],
    ['no unit at all', 'M2', 'program-no-unit '],
  ])('says where a program leaves a doubt: %s', (_, text, problem) => {
    expect(problemOf(text)).toBe(problem);
  });
});
