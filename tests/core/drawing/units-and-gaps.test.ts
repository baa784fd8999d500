import { describe, expect, it } from 'vitest';
import { outlineOf } from '../../../core/drawing/read-drawing';
import { surveyDrawing } from '../../../core/drawing/survey-drawing';
import { unitCandidates } from '../../../core/drawing/unit-candidates';
import type { GapHistogram } from '../../../core/drawing/gap-histogram';
import type { DrawingUnit } from '../../../core/units';
import { dxf, line, raw, square, valueOf, type Groups } from './drawn';

const sized = (side: number, unit: number) =>
  unitCandidates(raw(dxf({ header: [9, '$INSUNITS', 70, unit], entities: square(0, 0, side) })));

describe('candidates for the unit, with the size that the part then has', () => {
  it('nothing stated: mm and inch, and others where they make a usual size', () => {
    expect(sized(2, 0).map(({ unit, width, isUsual }) => `${unit} ${width} ${isUsual}`)).toEqual([
      'mm 2 true',
      'inch 50.8 true',
      'cm 20 true',
    ]);
    expect(sized(2000, 0).map(({ unit, isUsual }) => `${unit} ${isUsual}`)).toEqual([
      ...['mm false', 'inch false', 'mil true'],
    ]);
  });

  it('the stated one first, with the others beside it: a header may be wrong', () => {
    expect(sized(80, 1).map(({ unit, isStated, isUsual }) => `${unit} ${isStated} ${isUsual}`)).toEqual([
      ...['inch true false', 'mm false true', 'cm false true', 'mil false true'],
    ]);
  });
});

describe('the gaps between ends', () => {
  const gapsOf = (entities: Groups, unit: DrawingUnit = 'mm'): GapHistogram => {
    const { gaps } = surveyDrawing(raw(dxf({ entities })), unit);
    if (!gaps) throw new Error('no gaps in a drawing with a unit');
    return gaps;
  };
  const withGaps = (...gaps: number[]): Groups =>
    gaps.flatMap((gap, i) => [
      ...[...line(0, 20 * i, 10, 20 * i), ...line(10, 20 * i + gap, 10, 20 * i + 10)],
      ...[...line(10, 20 * i + 10, 0, 20 * i + 10), ...line(0, 20 * i + 10, 0, 20 * i)],
    ]);

  it('are counted by size; ends that meet are exact', () => {
    const { exact, bins, beyond, suggested } = gapsOf(withGaps(0.003, 0.0031, 0.4));
    expect(exact).toBe(18);
    expect(beyond).toBe(0);
    const found = bins.filter(({ count }) => count > 0).map(({ from, to, count }) => [from, to, count]);
    expect(found).toEqual([
      [expect.closeTo(0.002, 12), expect.closeTo(0.005, 12), 4],
      [expect.closeTo(0.2, 12), expect.closeTo(0.5, 12), 2],
    ]);
    // Where they are, for the canvas: both ends of the gap of 0.4.
    const places = bins.find(({ from }) => from > 0.1)?.places ?? [];
    expect(places.map(({ x, y }) => [x, y])).toEqual(
      expect.arrayContaining([
        [10, 40],
        [10, 40.4],
      ]),
    );
    // Between 0.0031 and 0.4: their geometric mean.
    expect(suggested).toBeCloseTo(Math.sqrt(0.0031 * 0.4), 9);
  });

  it('what is suggested closes the small ones and leaves the large one open', () => {
    const drawing = raw(dxf({ entities: withGaps(0.003, 0.02, 0.4) }));
    const { suggested } = gapsOf(withGaps(0.003, 0.02, 0.4));
    expect(valueOf(outlineOf(drawing, 'mm', suggested ?? NaN)).contours).toHaveLength(2);
  });

  it('scale with the unit; without gaps there is nothing to suggest', () => {
    const inch = gapsOf(withGaps(0.001), 'inch');
    expect(inch.bins.find(({ count }) => count > 0)?.from).toBeCloseTo(0.02, 12);
    expect(gapsOf(withGaps(0))).toMatchObject({
      exact: 8,
      suggested: null,
    });
    expect(gapsOf(square(0, 0, 9))).toMatchObject({
      exact: 0,
      suggested: null,
    });
  });
});
