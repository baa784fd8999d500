import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readProgram } from '../../../core/check/read-program';
import { wirePath } from '../../../core/check/wire-path';
import {
  placeAt,
  timelineOf,
  timeOfLine,
  timeOfStep,
  type Timeline,
} from '../../../renderer/replay/timeline';

/** Lines 1 to 3 are %, unit and set-up. */
function clockOf(blocks: string, offsets: readonly (readonly [number, number])[] = []): Timeline {
  const reading = readProgram(`%\nG71\nG17 G40 G90\n${blocks}\nM30\n`);
  if (!reading.ok) throw new Error(reading.problem.what);
  return timelineOf(wirePath(reading.value, new Map(offsets)), reading.value, 60);
}

// A millimetre at 2 mm/min takes 30 s; the quarter circle of radius 2 is π mm long: 30π s.
const sample = clockOf(
  'G00 X0 Y0\nM00 (THREAD)\n(ROUGH)\nG01 X1 F2\nG03 X3 Y2 I0 J2\nM00 (SECURE)\nG01 Y5 F6\nG00 X9 Y9\nM00\nG01 X10 F1',
);

describe('timelineOf', () => {
  it('takes length over feed for a cut and the same time for every threading', () => {
    const expected = [
      0,
      60,
      90,
      90 + 30 * Math.PI,
      120 + 30 * Math.PI,
      180 + 30 * Math.PI,
      240 + 30 * Math.PI,
    ];
    expect(sample.starts).toHaveLength(expected.length);
    expected.forEach((time, i) => expect(sample.starts[i]).toBeCloseTo(time, 9));
    expect(sample.total).toBe(sample.starts[6]);
  });

  it('puts stops where the moves before them are done', () => {
    expect(sample.pauses.map(({ line, isThreading, said }) => [line, isThreading, said])).toEqual([
      [5, true, 'THREAD'],
      [9, false, 'SECURE'],
      [12, true, ''],
    ]);
    const [threading, secure, second] = sample.pauses.map(({ time }) => time);
    expect(threading).toBe(60);
    expect(secure).toBeCloseTo(90 + 30 * Math.PI, 9);
    expect(second).toBeCloseTo(180 + 30 * Math.PI, 9);
  });

  it('is empty for a program without moves', () => {
    const nothing = clockOf('M00');
    expect(nothing.total).toBe(0);
    expect(placeAt(nothing, 5).move).toBe(-1);
    expect(nothing.pauses.map(({ time }) => time)).toEqual([0]);
  });
});

describe('placeAt', () => {
  it('runs along lines and arcs at their feed', () => {
    expect(placeAt(sample, 75)).toMatchObject({ at: { x: 0.5, y: 0 }, line: 7, share: 0.5 });
    const half = placeAt(sample, 90 + 15 * Math.PI).at;
    expect(half.x).toBeCloseTo(1 + 2 * Math.SQRT1_2, 9);
    expect(half.y).toBeCloseTo(2 - 2 * Math.SQRT1_2, 9);
  });

  it('is still on a move at its very end, and waits before the start and after the end', () => {
    expect(placeAt(sample, 90)).toMatchObject({ at: { x: 1, y: 0 }, line: 7 });
    expect(placeAt(sample, -5)).toMatchObject({ at: { x: 0, y: 0 }, line: 4 });
    expect(placeAt(sample, 1e9)).toMatchObject({ at: { x: 10, y: 9 }, line: 13, share: 1 });
  });

  it('leans the wire as U and V say', () => {
    const leaning = clockOf('G00 X0 Y0\nG01 X1 U0.2 V-0.4 F2\nX2');
    // Halfway up the first cut is 1.1 × 0.2 mm long, at 2 mm/min.
    const seconds = 30 * Math.hypot(1.1, 0.2);
    const { lean } = placeAt(leaning, 60 + seconds / 2);
    expect(lean.x).toBeCloseTo(0.1, 9);
    expect(lean.y).toBeCloseTo(-0.2, 9);
    expect(placeAt(leaning, 60 + seconds + 15).lean).toEqual({ x: 0.2, y: -0.4 });
  });

  it('turns the upper end while the lower one rests', () => {
    const cone = clockOf('G00 X0 Y0\nG01 X1 U1 V0 F2\nX1 U0 V1');
    expect(cone.total).toBeCloseTo(60 + 30 * 1.5 + 30 * Math.SQRT1_2, 9);
    const { at, lean } = placeAt(cone, cone.total - 15 * Math.SQRT1_2);
    expect(at).toEqual({ x: 1, y: 0 });
    expect(lean.x).toBeCloseTo(0.5, 9);
    expect(lean.y).toBeCloseTo(0.5, 9);
  });

  it('never goes back: line by line, and on the wire no faster than its feed', () => {
    const time = fc.double({ min: -10, max: sample.total + 10, noNaN: true });
    fc.assert(
      fc.property(time, fc.double({ min: 0, max: 20, noNaN: true }), (at, more) => {
        const [first, second] = [placeAt(sample, at), placeAt(sample, at + more)];
        expect(second.move).toBeGreaterThanOrEqual(first.move);
        expect(second.line).toBeGreaterThanOrEqual(first.line);
        if (second.move === first.move) expect(second.share).toBeGreaterThanOrEqual(first.share);
        const isFed = [first, second].every(({ move }) => sample.moves[move]?.isRapid === false);
        if (!isFed || second.move - first.move > 1) return;
        const way = Math.hypot(second.at.x - first.at.x, second.at.y - first.at.y);
        expect(way).toBeLessThanOrEqual((6 * more) / 60 + 1e-9);
      }),
    );
  });
});

describe('lines and steps', () => {
  it('goes to where a line has been done; to what was reached for a line that moves nothing', () => {
    const place = (line: number) => placeAt(sample, timeOfLine(sample, line)).at;
    expect(place(7)).toEqual({ x: 1, y: 0 });
    expect(place(8).x).toBeCloseTo(3, 9);
    // A stop, a comment, the head.
    expect(place(9).y).toBeCloseTo(2, 9);
    expect(timeOfLine(sample, 6)).toBe(60);
    expect(timeOfLine(sample, 1)).toBe(0);
    expect(timeOfLine(sample, 99)).toBe(sample.total);
  });

  it('answers for every line with a time at which that line is the current one', () => {
    for (const { line } of sample.moves) expect(placeAt(sample, timeOfLine(sample, line)).line).toBe(line);
  });

  it('steps from the end of one move to the end of the next, and back', () => {
    let time = 0;
    const lines: number[] = [];
    for (let i = 0; i < 6; i++) {
      time = timeOfStep(sample, time, 1);
      lines.push(placeAt(sample, time).line);
    }
    expect(lines).toEqual([4, 7, 8, 10, 11, 13]);
    expect(time).toBe(sample.total);
    expect(timeOfStep(sample, time, 1)).toBe(sample.total);
    const back: number[] = [];
    for (let i = 0; i < 6; i++) {
      time = timeOfStep(sample, time, -1);
      back.push(placeAt(sample, time).line);
    }
    expect(back).toEqual([11, 10, 8, 7, 4, 4]);
    expect(time).toBe(0);
    expect(timeOfStep(sample, 75, -1)).toBe(60);
  });

  it('takes a corner that the control rounds and the move after it as one step', () => {
    const rolled = clockOf('G00 X0 Y-5\nG42 D1 G01 X0 Y0 F2\nX3\nY4\nG40 X9', [[1, 0.5]]);
    const ends: number[] = [];
    for (let time = 60; time < rolled.total;) {
      time = timeOfStep(rolled, time, 1);
      ends.push(placeAt(rolled, time).line);
    }
    expect(ends).toEqual([5, 6, 7, 8]);
  });

  it('passes moves that take no time', () => {
    const stuck = clockOf('G00 X0 Y0\nG01 X1\nX2\nX3 F1');
    expect(timeOfStep(stuck, 60, 1)).toBe(stuck.total);
    expect(timeOfStep(stuck, stuck.total, -1)).toBe(60);
  });
});
